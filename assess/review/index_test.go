package review

import (
	"bytes"
	"encoding/binary"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/assess/casebook"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// known reads a folder through an index and fails unless the rows are those of
// reading everything; it returns how many came from the index.
func known(t *testing.T, dir string, o Options) int {
	t.Helper()
	got, totals := read(t, dir, o)
	o.Index = ""
	want, _ := read(t, dir, o)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("the index gives\n%+v\nreading gives\n%+v", got, want)
	}
	return totals.Known
}

func three(t *testing.T) (dir string, o Options) {
	dir = folder(t, map[string]string{"a.json": encoded(t, visit(t)), "in/b.json": encoded(t, visit(t, "company: B")), "torn.json": "{"})
	return dir, Options{Index: filepath.Join(t.TempDir(), "cache", "x.index"), Program: "test"}
}

func TestTheIndexSavesReading(t *testing.T) {
	dir, o := three(t)
	for i, want := range []int{0, 3, 3} {
		if got := known(t, dir, o); got != want {
			t.Errorf("run %d: %d known, want %d", i, got, want)
		}
	}
	if err := os.Remove(o.Index); err != nil {
		t.Fatal(err)
	}
	if got := known(t, dir, o); got != 0 {
		t.Errorf("%d known without an index", got)
	}
}

// An edit is seen: of another size, of the same size, and of the same size with
// the old time put back, where the system keeps the time of the change.
func TestAnEditIsSeen(t *testing.T) {
	dir, o := three(t)
	known(t, dir, o)
	old := time.Now().Add(-time.Hour)
	write(t, dir, "in/b.json", encoded(t, visit(t, "company: Longer")), old)
	if got := known(t, dir, o); got != 2 {
		t.Errorf("another size: %d known", got)
	}
	write(t, dir, "in/b.json", encoded(t, visit(t, "company: Larger")), old.Add(time.Second))
	if got := known(t, dir, o); got != 2 {
		t.Errorf("another time: %d known", got)
	}
	if runtime.GOOS != "linux" {
		return
	}
	write(t, dir, "in/b.json", encoded(t, visit(t, "company: Bigger")), old.Add(time.Second))
	if got := known(t, dir, o); got != 2 {
		t.Errorf("the same size and time: %d known", got)
	}
}

func TestFilesThatComeAndGo(t *testing.T) {
	dir, o := three(t)
	known(t, dir, o)
	if err := os.Rename(filepath.Join(dir, "a.json"), filepath.Join(dir, "in", "c.json")); err != nil {
		t.Fatal(err)
	}
	known(t, dir, o)
	if got := known(t, dir, o); got != 3 {
		t.Errorf("%d known", got)
	}
}

// A file written as the scan began could be edited again within one tick of the
// clock: it is read every time until it is older.
func TestAFreshFileIsNotTrusted(t *testing.T) {
	dir, o := three(t)
	o.Now = time.Now
	known(t, dir, o)
	if got := known(t, dir, o); got != 0 {
		t.Errorf("%d known", got)
	}
}

func TestOtherRulesOrRangeTrustNoIndex(t *testing.T) {
	dir, o := three(t)
	known(t, dir, o)
	o.Program = "another build"
	if got := known(t, dir, o); got != 0 {
		t.Errorf("another build: %d known", got)
	}
	offered := system.Demo()
	offered.Systems = offered.Systems[:3]
	o.Criteria = NewCriteria(offered, today)
	if got := known(t, dir, o); got != 0 {
		t.Errorf("another range: %d known", got)
	}
}

// What is remembered is there before a file is looked at, and leaves the index as
// it is.
func TestRememberedRows(t *testing.T) {
	dir, o := three(t)
	known(t, dir, o)
	before, err := os.ReadFile(o.Index)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := read(t, dir, o)
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	o.Remembered = true
	if rows, totals := read(t, dir, o); totals.Files != 3 || totals.Unread != 1 || !reflect.DeepEqual(rows, want) {
		t.Errorf("%+v %+v", totals, rows)
	}
	if after, _ := os.ReadFile(o.Index); string(after) != string(before) {
		t.Error("the index changed")
	}
}

// Whatever happens to the index, the rows stay right.
func TestADamagedIndexIsRebuilt(t *testing.T) {
	dir, o := three(t)
	want, _ := read(t, dir, o)
	whole, err := os.ReadFile(o.Index)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(rt *rapid.T) {
		data := append([]byte(nil), whole...)
		for range rapid.IntRange(1, 3).Draw(rt, "times") {
			data[rapid.IntRange(0, len(data)-1).Draw(rt, "at")] ^= byte(rapid.IntRange(1, 255).Draw(rt, "flip"))
		}
		data = data[:rapid.IntRange(0, len(data)).Draw(rt, "cut")]
		if err := os.WriteFile(o.Index, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if got, totals := read(t, dir, o); !reflect.DeepEqual(got, want) || totals.Known > 0 && string(data) != string(whole) {
			rt.Fatalf("%d known", totals.Known)
		}
	})
	if got := known(t, dir, o); got != 3 {
		t.Errorf("%d known at the end", got)
	}
}

// An index with a right checksum and wrong contents is refused, or else every
// entry of it can be read.
func FuzzIndex(f *testing.F) {
	key := strings.Repeat("k", keyLen)
	head := indexMagic + key
	var out bytes.Buffer
	w := newIndexWriter(&out, key)
	w.entry(&some1)
	w.entry(&entry{path: "b.json", row: Row{Rep: "R"}})
	if err := w.end(); err != nil {
		f.Fatal(err)
	}
	whole, tail := out.String(), out.Len()-tailLen
	textsAt := binary.LittleEndian.Uint64([]byte(whole[tail+4:]))
	f.Add([]byte(whole[len(head):textsAt]), []byte(whole[textsAt:tail]), uint32(2))
	f.Fuzz(func(t *testing.T, entries, texts []byte, count uint32) {
		data := append(append([]byte(head), entries...), texts...)
		data = binary.LittleEndian.AppendUint32(data, count)
		data = binary.LittleEndian.AppendUint64(data, uint64(len(head)+len(entries)))
		data = binary.LittleEndian.AppendUint32(data, checksum(string(data)))
		s, err := decodeIndex(string(data), key)
		if err != nil {
			return
		}
		var e entry
		for i := range s.refs {
			s.get(i, &e)
		}
		if len(s.refs) != int(count) {
			t.Errorf("%d entries, want %d", len(s.refs), count)
		}
	})
}

// some1 is an entry with something in every field of the entry.
var some1 = entry{path: "a.json", stamp: stamp{size: 1, modified: 2, changed: 1, inode: 9},
	row:  Row{Path: "a.json", Company: "A", Rep: "R", Why: "x\ny", Flags: 3, Thickest: 9.525, Noted: Noted{Minutes: 7, Slow: 2}, Stage: Judged},
	cuts: []timing{{"demo-45", demonstration.Timed{Visit: "a.json", Metal: "stainless", Thickness: unit.Known(unit.Millimetre(6)), Took: 0.1, Predicted: 18}}}}

// What is written is read back as it was.
func TestIndexRoundTrip(t *testing.T) {
	files := map[string]string{}
	for path, data := range casebook.ManyVisits(300, 3) {
		files[path] = string(data)
	}
	dir := folder(t, files)
	o := Options{Index: filepath.Join(t.TempDir(), "x.index")}
	first, _ := read(t, dir, o)
	second, totals := read(t, dir, o)
	if totals.Known != len(files) || !maps.Equal(first, second) {
		t.Errorf("%+v", totals)
	}
}

func TestAnIndexThatCannotBeWrittenCostsOnlyTime(t *testing.T) {
	dir, o := three(t)
	o.Index = filepath.Join(dir, "a.json", "x.index") // below a file
	if rows, _ := read(t, dir, o); len(rows) != 3 {
		t.Errorf("%d rows", len(rows))
	}
}

// What a killed program left beside the index is taken away once it is old; a
// program that still writes is left alone.
func TestWhatIsLeftBesideTheIndex(t *testing.T) {
	dir := folder(t, map[string]string{"a.json": "{}"})
	for _, c := range []struct {
		age  time.Duration
		kept bool
	}{{time.Hour, true}, {time.Second, false}} {
		o := Options{Index: filepath.Join(t.TempDir(), "folder.index"), Now: later}
		left := o.Index + ".new"
		write(t, filepath.Dir(left), filepath.Base(left), "half an ind", time.Now().Add(-c.age))
		read(t, dir, o)
		_, err := os.Stat(o.Index)
		if got := err == nil; got != c.kept {
			t.Errorf("left %v ago: an index is kept: %v", c.age, got)
		}
		if _, err := os.Stat(left); os.IsNotExist(err) != c.kept {
			t.Errorf("left %v ago: %v", c.age, err)
		}
	}
}
