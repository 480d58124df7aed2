package html

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// pages are those of all samples in both languages, by name.
func pages(t *testing.T) map[string]string {
	t.Helper()
	list := map[string]string{}
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		for _, words := range []*message.Catalog{nil, catalog.For("de")} {
			out, err := Render(report.Build(v, system.Demo(), report.Options{Words: words}))
			if err != nil {
				t.Fatal(err)
			}
			list[name+"-"+words.Tag()] = string(out)
		}
	}
	return list
}

// browser is a real one, where there is one.
func browser(t *testing.T, args ...string) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
			defer cancel()
			args = append([]string{"--headless=new", "--no-sandbox", "--disable-gpu", "--user-data-dir=" + t.TempDir()}, args...)
			out, err := exec.CommandContext(ctx, path, args...).CombinedOutput()
			if err != nil {
				t.Fatalf("%s: %v\n%s", name, err, out)
			}
			return string(out)
		}
	}
	t.Skip("no browser here: printing and narrow screens are not tried")
	return ""
}

var onePage = regexp.MustCompile(`/Type ?/Page\b[^s]`)

// A real browser prints every page on exactly one sheet, the shorter one.
func TestPrintsOnOneSheet(t *testing.T) {
	for name, text := range pages(t) {
		dir := t.TempDir()
		if keep := os.Getenv("CUTBRIEF_KEEP"); keep != "" {
			dir = keep
		}
		file, printed := filepath.Join(dir, name+".html"), filepath.Join(dir, name+".pdf")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		browser(t, "--no-pdf-header-footer", "--print-to-pdf="+printed, file)
		data, err := os.ReadFile(printed)
		if err != nil {
			t.Fatal(err)
		}
		if n := len(onePage.FindAll(data, -1)); n != 1 {
			t.Errorf("%s: %d sheets", name, n)
		}
	}
}

// At 360 pixels nothing has to be scrolled sideways.
func TestReadableOnATelephone(t *testing.T) {
	const probe = `<script>addEventListener("load",()=>{document.title="wide "+document.documentElement.scrollWidth})</script>`
	for name, text := range pages(t) {
		file := filepath.Join(t.TempDir(), "page.html")
		text = strings.Replace(text, `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`, probe, 1)
		frame := filepath.Join(filepath.Dir(file), "frame.html") // a window cannot be as narrow
		outer := `<iframe id=f src="page.html" width="360" height="640"></iframe><script>onload=()=>{setTimeout(()=>{document.body.append("wide "+document.getElementById("f").contentDocument.documentElement.scrollWidth+";")},300)}</script>`
		for path, data := range map[string]string{file: text, frame: outer} {
			if err := os.WriteFile(path, []byte(data), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		out := browser(t, "--allow-file-access-from-files", "--virtual-time-budget=3000", "--dump-dom", frame)
		if !strings.Contains(out, "wide 3") || strings.Contains(out, "wide 36") && !strings.Contains(out, "wide 360;") {
			t.Errorf("%s: %s", name, out[max(0, len(out)-200):])
		}
	}
}
