package main

import (
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/rules/system"
)

// invented is the saved file of the first invented visit.
func invented(t *testing.T) []byte {
	t.Helper()
	return sampled(t, casebook.DemoVisits()[0])
}

// shown is the saved file of an invented visit after its demonstration.
func shown(t *testing.T) []byte { return sampled(t, "trailer-builder") }

func sampled(t testing.TB, name string) []byte {
	t.Helper()
	v, ok := casebook.DemoVisit(name)
	if !ok {
		t.Fatalf("no invented visit %s", name)
	}
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func template() string { return system.Template() }
