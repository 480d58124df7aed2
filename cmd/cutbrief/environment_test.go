package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var ownVariable = regexp.MustCompile(`\bCUTBRIEF_[A-Z]+\b`)

// TestVariablesAreTold: what the program reads from the environment is in the
// manual.
func TestVariablesAreTold(t *testing.T) {
	told := ""
	for _, v := range variables {
		told += v.name + " "
	}
	files, err := filepath.Glob("*.go")
	store, unread := filepath.Glob("../../assess/store/*.go")
	files = append(files, store...)
	if err != nil || unread != nil {
		t.Fatal(err, unread)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range ownVariable.FindAllString(string(data), -1) {
			if !strings.Contains(told, name+" ") {
				t.Errorf("%s reads %s, which the manual does not tell", file, name)
			}
		}
	}
}
