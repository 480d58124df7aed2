package main

import (
	"crypto/sha256"
	"encoding/json"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
)

// built is what a program might record of itself.
func built(t *testing.T) (*debug.BuildInfo, []module) {
	t.Helper()
	modules, err := modulesOf(targets[:1])
	if err != nil {
		t.Skip("the modules cannot be listed here: ", err)
	}
	info := &debug.BuildInfo{GoVersion: "go1.26.8", Path: program, Main: debug.Module{Path: ours, Version: "v1.2.3+dirty"}}
	for _, m := range modules {
		if m.path != ours {
			info.Deps = append(info.Deps, &debug.Module{Path: m.path, Version: m.version, Sum: "h1:x="})
		}
	}
	return info, modules
}

// The forms are those of the CycloneDX 1.5 schema and of package-url.
var (
	purlForm   = regexp.MustCompile(`^pkg:golang/[a-z0-9._~/-]+@[A-Za-z0-9._%-]+$`)
	serialForm = regexp.MustCompile(`^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$`)
	hashForm   = regexp.MustCompile(`^[0-9a-f]{64}$`)
	spdx       = []string{"MIT", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "ISC"}
)

// TestBOM: the document has what the schema requires, names every module that the
// list of licences names, with a permissive licence, and is the same every time.
func TestBOM(t *testing.T) {
	info, modules := built(t)
	sum := sha256.Sum256([]byte("a program"))
	data, err := bomOf(targets[0], info, sum, licencesOf(modules))
	if err != nil {
		t.Fatal(err)
	}
	if again, _ := bomOf(targets[0], info, sum, licencesOf(modules)); string(again) != string(data) {
		t.Error("two documents of one program differ")
	}
	var b struct {
		BOMFormat, SpecVersion, SerialNumber string
		Version                              int
		Metadata                             struct{ Component bomComponent }
		Components                           []bomComponent
		Dependencies                         []bomDependency
	}
	if err := json.Unmarshal(data, &b); err != nil {
		t.Fatal(err)
	}
	if b.BOMFormat != "CycloneDX" || b.SpecVersion != "1.5" || b.Version != 1 || !serialForm.MatchString(b.SerialNumber) {
		t.Errorf("%s %s, version %d, serial number %s", b.BOMFormat, b.SpecVersion, b.Version, b.SerialNumber)
	}
	app := b.Metadata.Component
	if app.Type != "application" || app.URL != "pkg:golang/cutbrief@v1.2.3%2Bdirty" || len(app.Hashes) != 1 || app.Hashes[0].Algorithm != "SHA-256" || !hashForm.MatchString(app.Hashes[0].Content) {
		t.Errorf("the program: %+v", app)
	}
	refs := []string{app.Ref}
	for _, c := range b.Components {
		if c.Type != "library" || c.Name == "" || c.Version == "" || !purlForm.MatchString(c.URL) || slices.Contains(refs, c.Ref) {
			t.Errorf("%+v", c)
		}
		if len(c.Licences) != 1 || !slices.Contains(spdx, c.Licences[0].Licence.ID) {
			t.Errorf("%s: licence %v", c.Name, c.Licences)
		}
		refs = append(refs, c.Ref)
	}
	if len(b.Dependencies) != 1 || b.Dependencies[0].Ref != app.Ref || len(b.Dependencies[0].On) != len(b.Components) {
		t.Errorf("dependencies: %+v", b.Dependencies)
	}
	notice, err := notices(targets[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range b.Components[1:] { // the standard library stands in the notice's first words
		if !strings.Contains(string(notice), "\n"+c.Name+" "+c.Version+"\n") {
			t.Errorf("%s %s is not in %s", c.Name, c.Version, noticesFile)
		}
	}
	if named := strings.Count(string(notice), strings.Repeat("=", 72)); named != len(b.Components) {
		t.Errorf("%d modules have their licence in %s, %d are in the list", named, noticesFile, len(b.Components))
	}
}

// A module without a licence we know is not handed out.
func TestBOMNeedsLicences(t *testing.T) {
	info, modules := built(t)
	licences := licencesOf(modules)
	delete(licences, info.Deps[0].Path)
	if _, err := bomOf(targets[0], info, sha256.Sum256(nil), licences); err == nil {
		t.Errorf("%s went along without a licence", info.Deps[0].Path)
	}
}
