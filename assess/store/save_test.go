package store

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"cutbrief/assess"
)

var now = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// visit is a new visit to a company.
func visit(t *testing.T, company string) *assess.Visit {
	t.Helper()
	v := assess.New("visit-"+company, now)
	v.Set(assess.Answer{Question: assess.FactCompany, Said: company, State: assess.Told})
	v.Set(assess.Answer{Question: assess.FactDate, Said: "2026-11-25", State: assess.Told})
	return v
}

func save(t *testing.T, path string, v *assess.Visit) {
	t.Helper()
	if err := Save(path, v, now); err != nil {
		t.Fatal(err)
	}
}

func load(t *testing.T, path string) *assess.Visit {
	t.Helper()
	v, unknown, err := Load(path)
	if err != nil || len(unknown) > 0 {
		t.Fatal(err, unknown)
	}
	return v
}

// onlyFile fails if a folder holds anything beside the one file.
func onlyFile(t *testing.T, dir, name string) {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != 1 || files[0].Name() != name {
		t.Errorf("the folder holds %v, want %s alone", files, name)
	}
}

func TestSaveAndLoad(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	v := visit(t, "A")
	save(t, path, v)
	v.Set(assess.Answer{Question: assess.FactRep, Said: "J", State: assess.Told})
	save(t, path, v)
	got := load(t, path)
	if got.Revision != 2 || v.Revision != 2 || len(got.Answers) != 3 {
		t.Errorf("revision %d with %d answers, want 2 with 3", got.Revision, len(got.Answers))
	}
	onlyFile(t, dir, "a.json")
	if info, _ := os.Stat(path); runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Errorf("mode %o, want 600", info.Mode().Perm())
	}
}

func TestSecondWriterIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	save(t, path, visit(t, "A"))
	first, second := load(t, path), load(t, path)
	save(t, path, first)
	before, _ := os.ReadFile(path)
	if err := Save(path, second, now); !errors.Is(err, ErrChanged) {
		t.Fatalf("got %v", err)
	}
	if after, _ := os.ReadFile(path); string(after) != string(before) || second.Revision != 1 {
		t.Error("the refused save changed something")
	}
}

// Of many programs that save the same revision at once, one wins.
func TestOneOfManyWritersWins(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	save(t, path, visit(t, "A"))
	var mu sync.Mutex
	var wg sync.WaitGroup
	won := 0
	var writers []*assess.Visit
	for range 8 {
		writers = append(writers, load(t, path))
	}
	for _, v := range writers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			err := Save(path, v, now)
			mu.Lock()
			defer mu.Unlock()
			if err == nil {
				won++
			} else if !errors.Is(err, ErrChanged) {
				t.Error(err)
			}
		}()
	}
	wg.Wait()
	if won != 1 || load(t, path).Revision != 2 {
		t.Errorf("%d saves won, revision %d; want 1 and 2", won, load(t, path).Revision)
	}
	onlyFile(t, dir, "a.json")
}

func TestAnotherVisitIsNotWrittenOver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	save(t, path, visit(t, "A"))
	other := visit(t, "B")
	other.Revision = 1
	if err := Save(path, other, now); !errors.Is(err, ErrChanged) {
		t.Errorf("got %v", err)
	}
}

func TestAnUnreadableFileIsNotWrittenOver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	if err := os.WriteFile(path, []byte("my notes"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Save(path, visit(t, "A"), now); !errors.Is(err, ErrChanged) {
		t.Errorf("got %v", err)
	}
	if data, _ := os.ReadFile(path); string(data) != "my notes" {
		t.Error("the file was written over")
	}
}

func TestALinkToNothingIsRefused(t *testing.T) {
	link := filepath.Join(t.TempDir(), "link.json")
	if err := os.Symlink("missing.json", link); err != nil {
		t.Skip("no links here:", err)
	}
	if err := Save(link, visit(t, "A"), now); err == nil {
		t.Error("saved")
	}
}

func TestReadOnlyFolder(t *testing.T) {
	if runtime.GOOS == "windows" || os.Getuid() == 0 {
		t.Skip("modes do not bind here")
	}
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	v := visit(t, "A")
	save(t, path, v)
	if err := os.Chmod(dir, 0o500); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o700)
	if err := Save(path, v, now); !errors.Is(err, os.ErrPermission) {
		t.Errorf("got %v", err)
	}
	if load(t, path).Revision != 1 {
		t.Error("the old file is not whole")
	}
}

// A save that fails after its file was begun leaves nothing behind.
func TestFailedSaveLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	if err := os.Mkdir(path, 0o700); err != nil {
		t.Fatal(err)
	}
	v := visit(t, "A")
	if err := Save(path, v, now); err == nil || !strings.Contains(err.Error(), "folder") {
		t.Errorf("got %v", err)
	}
	onlyFile(t, dir, "a.json")
	if v.Revision != 0 {
		t.Error("the revision was raised")
	}
}

func TestFolderThatIsMissing(t *testing.T) {
	if err := Save(filepath.Join(t.TempDir(), "no", "a.json"), visit(t, "A"), now); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

// A save that another program is working on is waited for, and then left alone.
func TestASaveUnderWayIsLeftAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	v := visit(t, "A")
	err := ReplaceFile(path, func() ([]byte, error) {
		if err := Save(path, v, now); !errors.Is(err, ErrChanged) {
			t.Errorf("got %v", err)
		}
		return v.Encode()
	})
	if err != nil || load(t, path).Revision != 0 {
		t.Errorf("the other program's file is not in place: %v", err)
	}
}

// The clock may jump back between two saves: what counts is the revision.
func TestAClockPutBackLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.json")
	v := visit(t, "A")
	save(t, path, v)
	v.Set(assess.Answer{Question: assess.FactRep, Said: "J", State: assess.Told})
	if err := Save(path, v, now.AddDate(-1, 0, 0)); err != nil {
		t.Fatal(err)
	}
	if got := load(t, path); got.Revision != 2 || len(got.Answers) != 3 {
		t.Errorf("revision %d with %d answers", got.Revision, len(got.Answers))
	}
}
