package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// permissive are sentences by which a licence that asks for no more than its
// own notice is known. Source: the texts of the licences, published by the Open
// Source Initiative.
var permissive = map[string]string{
	"Permission is hereby granted, free of charge":      "MIT",
	"Redistribution and use in source and binary forms": "BSD",
	"Apache License": "Apache-2.0",
	"Permission to use, copy, modify, and/or distribute": "ISC",
}

// TestLicences lists every module that is built into the program with its
// licence, and fails on one that is not permissive or says nothing.
func TestLicences(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}", ".").Output()
	if err != nil {
		t.Skip("the modules cannot be listed here:", err)
	}
	modules := strings.Split(strings.TrimSpace(string(out)), "\n")
	slices.Sort(modules)
	for _, line := range slices.Compact(modules) {
		name, rest, _ := strings.Cut(line, " ")
		version, dir, _ := strings.Cut(rest, " ")
		if licence := licenceIn(dir); licence == "" {
			t.Errorf("%s %s: no permissive licence", name, version)
		} else {
			t.Log(name, version, licence)
		}
	}
}

// licenceIn names the licence of a module's folder, "" if it is not known.
func licenceIn(dir string) string {
	files, _ := filepath.Glob(filepath.Join(dir, "*"))
	for _, file := range files {
		base := strings.ToUpper(filepath.Base(file))
		if !strings.HasPrefix(base, "LICEN") && !strings.HasPrefix(base, "COPYING") {
			continue
		}
		data, _ := os.ReadFile(file)
		text := strings.Join(strings.Fields(string(data)), " ")
		for sentence, name := range permissive {
			if strings.Contains(text, sentence) {
				return name
			}
		}
	}
	return ""
}
