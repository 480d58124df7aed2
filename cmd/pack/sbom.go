package main

import (
	"bytes"
	"crypto/sha256"
	"debug/buildinfo"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
)

// bomEnding is what the list of what a program is made of ends in, behind the
// program's name: CycloneDX 1.5 in JSON.
const bomEnding = ".cdx.json"

// The document, as far as we fill it. Source: the CycloneDX 1.5 schema, from memory.
type (
	bom struct {
		Format   string `json:"bomFormat"`
		Spec     string `json:"specVersion"`
		Serial   string `json:"serialNumber"`
		Version  int    `json:"version"`
		Metadata struct {
			Component bomComponent `json:"component"`
		} `json:"metadata"`
		Components   []bomComponent  `json:"components"`
		Dependencies []bomDependency `json:"dependencies"`
	}
	bomComponent struct {
		Type       string        `json:"type"`
		Ref        string        `json:"bom-ref"`
		Name       string        `json:"name"`
		Version    string        `json:"version"`
		Hashes     []bomHash     `json:"hashes,omitempty"`
		Licences   []bomLicence  `json:"licenses,omitempty"`
		URL        string        `json:"purl"`
		Properties []bomProperty `json:"properties,omitempty"`
	}
	bomHash struct {
		Algorithm string `json:"alg"`
		Content   string `json:"content"`
	}
	bomLicence struct {
		Licence struct {
			ID string `json:"id"`
		} `json:"license"`
	}
	bomProperty struct {
		Name  string `json:"name"`
		Value string `json:"value"`
	}
	bomDependency struct {
		Ref string   `json:"ref"`
		On  []string `json:"dependsOn"`
	}
)

// writeBOMs writes beside each program what it is made of, as the program itself
// has recorded it, with the licences of the modules. It takes nothing from the
// clock.
func writeBOMs(dir string, list []target) error {
	for _, t := range list {
		modules, err := modulesOf([]target{t})
		if err != nil {
			return err
		}
		file := filepath.Join(dir, t.file())
		data, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		info, err := buildinfo.Read(bytes.NewReader(data))
		if err != nil {
			return err
		}
		made, err := bomOf(t, info, sha256.Sum256(data), licencesOf(modules))
		if err != nil {
			return err
		}
		if err := os.WriteFile(file+bomEnding, made, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// bomOf is the document of one program with this checksum.
func bomOf(t target, info *debug.BuildInfo, sum [sha256.Size]byte, licences map[string]string) ([]byte, error) {
	program := component("application", info.Main.Path, info.Main.Version, licences[info.Main.Path])
	program.Hashes = []bomHash{{"SHA-256", hex.EncodeToString(sum[:])}}
	program.Properties = []bomProperty{{"cutbrief:target", t.String()}, {"cutbrief:file", t.file()}}
	all := []bomComponent{component("library", "std", strings.TrimPrefix(info.GoVersion, "go"), "BSD-3-Clause")}
	for _, m := range info.Deps {
		if m.Replace != nil {
			m = m.Replace
		}
		one := component("library", m.Path, m.Version, licences[m.Path])
		if m.Sum != "" {
			one.Properties = []bomProperty{{"go:sum", m.Sum}}
		}
		all = append(all, one)
	}
	depends := bomDependency{Ref: program.Ref, On: []string{}}
	for _, c := range all {
		if len(c.Licences) == 0 {
			return nil, fmt.Errorf("%s: %w", c.Name, errNoLicence)
		}
		depends.On = append(depends.On, c.Ref)
	}
	slices.Sort(depends.On)
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	document := bom{Format: "CycloneDX", Spec: "1.5", Serial: serial(sum), Version: 1, Components: all, Dependencies: []bomDependency{depends}}
	document.Metadata.Component = program
	err := e.Encode(document)
	return out.Bytes(), err
}

func component(kind, path, version, licence string) bomComponent {
	// A Go module as package-url names it: in lower case, the version escaped. Source:
	// the purl specification, from memory.
	purl := "pkg:golang/" + strings.ToLower(path) + "@" + strings.ReplaceAll(url.PathEscape(version), "+", "%2B")
	c := bomComponent{Type: kind, Ref: purl, Name: path, Version: version, URL: purl}
	if licence != "" {
		c.Licences = make([]bomLicence, 1)
		c.Licences[0].Licence.ID = licence
	}
	return c
}

// serial is a UUID out of the checksum of the program, so that the same bytes have
// the same document (RFC 9562, version 8).
func serial(sum [sha256.Size]byte) string {
	id := sum[:16]
	id[6], id[8] = id[6]&0x0f|0x80, id[8]&0x3f|0x80
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", id[:4], id[4:6], id[6:8], id[8:10], id[10:16])
}

// sentence is what a licence is known by, with its name in the SPDX list.
type sentence struct{ says, name string }

// sentences are known, the first that fits. Source: the texts of the licences,
// published by the Open Source Initiative.
var sentences = []sentence{
	{"Apache License", "Apache-2.0"},
	{"Permission is hereby granted, free of charge", "MIT"},
	{"Permission to use, copy, modify, and/or distribute", "ISC"},
	{"Neither the name", "BSD-3-Clause"},
	{"Redistribution and use in source and binary forms", "BSD-2-Clause"},
	{"## License MIT", "MIT"}, // a page that introduces a module, in place of a text
}

// licencesOf names the licence of each module, where it is known.
func licencesOf(modules []module) map[string]string {
	named := map[string]string{}
	for _, m := range modules {
		texts, err := licencesIn(m.dir)
		if err != nil {
			continue
		}
		all := strings.Join(strings.Fields(string(bytes.Join(texts, []byte(" ")))), " ")
		if i := slices.IndexFunc(sentences, func(s sentence) bool { return strings.Contains(all, s.says) }); i >= 0 {
			named[m.path] = sentences[i].name
		}
	}
	return named
}
