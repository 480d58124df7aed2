// Sbom holds bills of materials to the published schema of CycloneDX 1.5, which comes
// with the library of its owners, and decodes them strictly with that library.
//
//	cd testdata/sbom && go run . FILE.cdx.json ...
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	cdx "github.com/CycloneDX/cyclonedx-go"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func main() {
	schema, err := compiled()
	for _, name := range os.Args[1:] {
		err = errors.Join(err, check(schema, name))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "sbom:", err)
		os.Exit(1)
	}
}

// compiled is the schema, and those it refers to, from the source of the library.
func compiled() (*jsonschema.Schema, error) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/CycloneDX/cyclonedx-go").Output()
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	const address = "http://cyclonedx.org/schema/"
	for name, file := range map[string]string{"bom-1.5.schema.json": "bom-1.5.schema.json", "spdx.schema.json": "spdx.schema.json", "jsf-0.82.schema.json": "jsf-0.82.schemax.json"} {
		f, err := os.Open(filepath.Join(strings.TrimSpace(string(dir)), "schema", file))
		if err != nil {
			return nil, err
		}
		defer f.Close()
		document, err := jsonschema.UnmarshalJSON(f)
		if err != nil {
			return nil, err
		}
		if err := c.AddResource(address+name, document); err != nil {
			return nil, err
		}
	}
	return c.Compile(address + "bom-1.5.schema.json")
}

func check(schema *jsonschema.Schema, name string) error {
	data, err := os.ReadFile(name)
	if err != nil || schema == nil {
		return err
	}
	document, err := jsonschema.UnmarshalJSON(strings.NewReader(string(data)))
	if err == nil {
		err = schema.Validate(document)
	}
	var bill cdx.BOM
	strict := json.NewDecoder(strings.NewReader(string(data)))
	strict.DisallowUnknownFields()
	if err := errors.Join(err, strict.Decode(&bill)); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	fmt.Printf("%s: CycloneDX %s, %d components, valid\n", filepath.Base(name), bill.SpecVersion, len(*bill.Components))
	return nil
}
