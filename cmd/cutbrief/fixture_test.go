package main

import (
	"testing"

	"cutbrief/assess/sample"
	"cutbrief/rules/system"
)

// invented is the saved file of the first invented visit.
func invented(t *testing.T) []byte {
	t.Helper()
	v, ok := sample.Visit(sample.Names()[0])
	if !ok {
		t.Fatal("no invented visit")
	}
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func template() string { return system.Template() }
