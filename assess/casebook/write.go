package casebook

import (
	"os"
	"path/filepath"
)

// WriteDemoVisits makes a folder that is not there yet and writes all invented visits into
// it.
func WriteDemoVisits(dir string) error {
	if err := os.Mkdir(dir, 0o700); err != nil {
		return err
	}
	for _, name := range DemoVisits() {
		v, _ := DemoVisit(name) // it is one of the names
		data, err := v.Encode()
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, name+".json"), data, 0o600); err != nil {
			return err
		}
	}
	return nil
}

// WriteManyVisits makes a folder that is not there yet and writes n invented visits into
// a tree below it, as Many makes them.
func WriteManyVisits(dir string, n int) error {
	if err := os.Mkdir(dir, 0o755); err != nil {
		return err
	}
	for path, data := range ManyVisits(n, 1) {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(name, data, 0o644); err != nil {
			return err
		}
	}
	return nil
}
