package main

import (
	"bytes"
	"debug/pe"
	"encoding/binary"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen/screentest"
	"cutbrief/assess/store"
)

// windowsVariable names a program for Windows to test, as it is handed out; without
// it one is built.
const windowsVariable = "CUTBRIEF_WINDOWS"

// windows is a machine with Windows, as far as Wine is one.
type windows struct {
	home    string // also drive Z: from the root on
	prefix  string
	program string
}

// openWindows makes such a machine, or skips the test where there is no Wine.
func openWindows(t *testing.T) *windows {
	t.Helper()
	if _, err := exec.LookPath("wine"); err != nil || testing.Short() {
		t.Skip("no Wine here; on Debian: apt-get install --no-install-recommends wine64 wine")
	}
	w := &windows{home: t.TempDir(), prefix: filepath.Join(t.TempDir(), "prefix"), program: os.Getenv(windowsVariable)}
	if w.program == "" {
		w.program = w.built(t, ".")
	}
	t.Cleanup(func() {
		stop := exec.Command("wineserver", "-k")
		stop.Env = w.env()
		stop.Run() // the machine is thrown away
	})
	if out, err := w.wine("wineboot", "-i").CombinedOutput(); err != nil {
		t.Skipf("Wine does not start here: %v: %s", err, out)
	}
	const library = "bcryptprimitives.dll"
	system := filepath.Join(w.prefix, "drive_c", "windows", "system32")
	if _, err := os.Stat(filepath.Join(system, library)); err != nil {
		put(t, filepath.Join(system, library), forwarding(library, "ProcessPrng", "ADVAPI32.SystemFunction036"))
	}
	return w
}

// built builds a program for Windows from a folder or a file.
func (w *windows) built(t *testing.T, source string) string {
	t.Helper()
	program := filepath.Join(w.home, strings.TrimSuffix(filepath.Base(source), ".go")+"cutbrief.exe")
	build := exec.Command("go", "build", "-trimpath", "-o", program, source)
	build.Env = append(os.Environ(), "GOOS=windows", "GOARCH=amd64", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return program
}

func (w *windows) env() []string {
	return append(os.Environ(), "WINEPREFIX="+w.prefix, "WINEDEBUG=-all", "WINEDLLOVERRIDES=mscoree,mshtml=", "DISPLAY=", "HOME="+w.home)
}

func (w *windows) wine(args ...string) *exec.Cmd {
	cmd := exec.Command("wine", args...)
	cmd.Dir, cmd.Env = w.home, w.env()
	return cmd
}

// raw is the same in a terminal that hands every key on as it is.
func (w *windows) raw(args ...string) *exec.Cmd {
	cmd := w.wine()
	cmd.Path, cmd.Args = "/bin/sh", append([]string{"sh", "-c", `stty raw -echo; exec wine "$@"`, "sh"}, args...)
	return cmd
}

// runs runs the program to its end, and returns all it said.
func (w *windows) runs(typed string, args ...string) (status int, said string) {
	cmd := w.wine(append([]string{w.program}, args...)...)
	cmd.Stdin = strings.NewReader(typed)
	out, _ := cmd.CombinedOutput()
	return cmd.ProcessState.ExitCode(), strings.ReplaceAll(string(out), "\r\n", "\n")
}

// forwarding is a library that has one function and takes it from another library.
// Wine before 9 has none that every program of Go asks for random bytes. Source of
// the form: the specification of PE by its owner, from memory.
func forwarding(library, name, to string) []byte {
	const page, block, before = 0x1000, 0x200, 50
	texts := library + "\x00" + name + "\x00" + to + "\x00"
	at := func(i int) uint32 { return uint32(page + before + i) }
	exports := struct {
		_                                [3]uint32
		Library, Base, Functions, Names  uint32
		FunctionsAt, NamesAt, OrdinalsAt uint32
		Function, Name                   uint32
		Ordinal                          uint16
	}{Library: at(0), Base: 1, Functions: 1, Names: 1, FunctionsAt: page + 40, NamesAt: page + 44, OrdinalsAt: page + 48,
		Function: at(len(library) + len(name) + 2), Name: at(len(library) + 1)}
	size := uint32(before + len(texts))
	head := pe.OptionalHeader64{Magic: 0x20b, SizeOfInitializedData: block, ImageBase: 0x6_0000_0000, SectionAlignment: page, FileAlignment: block,
		MajorOperatingSystemVersion: 6, MajorSubsystemVersion: 6, SizeOfImage: 2 * page, SizeOfHeaders: block, Subsystem: 3, DllCharacteristics: 0x100, NumberOfRvaAndSizes: 16}
	head.DataDirectory[0] = pe.DataDirectory{VirtualAddress: page, Size: size}
	var b bytes.Buffer
	write := func(v any) { binary.Write(&b, binary.LittleEndian, v) }
	write([]byte("MZ" + strings.Repeat("\x00", 58) + "\x40\x00\x00\x00PE\x00\x00"))
	write(pe.FileHeader{Machine: pe.IMAGE_FILE_MACHINE_AMD64, NumberOfSections: 1, SizeOfOptionalHeader: 240, Characteristics: 0x2022})
	write(head)
	write(pe.SectionHeader32{Name: [8]uint8([]byte(".edata\x00\x00")), VirtualSize: size, VirtualAddress: page, SizeOfRawData: block, PointerToRawData: block, Characteristics: 0x40000040})
	write(make([]byte, block-b.Len()))
	write(exports)
	write([]byte(texts))
	write(make([]byte, 2*block-b.Len()))
	return b.Bytes()
}

// TestWindows runs the program as Windows would: what is typed is kept whatever
// happens, what Windows forbids gets its sentence, and nothing is written over.
func TestWindows(t *testing.T) {
	w := openWindows(t)
	for name, test := range map[string]func(*testing.T, *windows){
		"sample": onWindowsSample, "killed": onWindowsKilled, "folder": onWindowsFolder, "reserved": onWindowsReserved,
		"held": onWindowsHeld, "console": onWindowsConsole, "drives": onWindowsDrives,
	} {
		t.Run(name, func(t *testing.T) { test(t, w) })
	}
}

func onWindowsSample(t *testing.T, w *windows) {
	status, said := w.runs("", "sample")
	page, err := os.ReadFile(filepath.Join(w.home, "farm-repair.pdf"))
	if status != exitDone || !strings.Contains(said, "RECOMMENDED SYSTEM") || err != nil || !bytes.HasPrefix(page, []byte("%PDF-")) {
		t.Errorf("status %d, %v: %s", status, err, said)
	}
}

// The draft of an interview that was killed is found again, with all that was
// answered, in the folder of the user.
func onWindowsKilled(t *testing.T, w *windows) {
	cmd := w.wine(w.program, "interview", "--plain")
	in, _ := cmd.StdinPipe()
	out, _ := cmd.StdoutPipe()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	io.WriteString(in, "Ålder Vale\nMarta\nMill Lane\n")
	var seen bytes.Buffer
	for buf := make([]byte, 4096); !strings.Contains(seen.String(), "date of the visit"); {
		n, err := out.Read(buf)
		if seen.Write(buf[:n]); err != nil {
			t.Fatalf("%v: %s", err, &seen)
		}
	}
	cmd.Process.Kill()
	cmd.Wait()
	status, said := w.runs("quit\n", "interview", "--plain")
	if status != exitDone || !strings.Contains(said, `1 visit unfinished in C:\users\`) {
		t.Errorf("status %d: %s", status, said)
	}
	drafts, _ := filepath.Glob(filepath.Join(w.prefix, "drive_c", "users", "*", "AppData", "Roaming", "cutbrief", "visits", "*-alder-vale.json"))
	if len(drafts) != 1 {
		t.Fatalf("drafts: %v", drafts)
	}
	if v, _, err := store.Load(drafts[0]); err != nil || saidOf(v, assess.FactCompany) != "Ålder Vale" || saidOf(v, assess.FactPlace) != "Mill Lane" {
		t.Errorf("%v: %+v", err, v)
	}
}

// deep is a folder whose path is longer than the 260 letters Windows once took.
func deep(t *testing.T, w *windows) string {
	dir := filepath.Join(append([]string{w.home}, strings.Split(strings.Repeat(strings.Repeat("d", 60)+"/", 5), "/")...)...)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	return dir
}

// A folder is reviewed and printed, also deep down; a page is replaced when asked to.
func onWindowsFolder(t *testing.T, w *windows) {
	for _, dir := range []string{filepath.Join(w.home, "visits"), deep(t, w)} {
		os.Mkdir(dir, 0o700)
		for i := range 3 {
			put(t, filepath.Join(dir, fmt.Sprintf("%d.json", i)), shown(t))
		}
		if status, said := w.runs("", "review", dir, "--format", "csv"); status != exitDone || strings.Count(said, "\n") != 4 {
			t.Errorf("status %d: %s", status, said)
		}
		visit, page := filepath.Join(dir, "0.json"), filepath.Join(dir, "0.pdf")
		put(t, page, []byte("old"))
		for _, c := range []struct {
			args   []string
			status int
		}{{[]string{"brief", visit, "--out", page}, exitFailed}, {[]string{"brief", visit, "--out", page, "--force"}, exitDone}} {
			if status, said := w.runs("", c.args...); status != c.status {
				t.Errorf("%v: status %d: %s", c.args, status, said)
			}
		}
		if data, err := os.ReadFile(page); err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
			t.Errorf("the page was not replaced: %.20q %v", data, err)
		}
		draft := filepath.Join(dir, "new.json")
		if status, said := w.runs("Alder Vale\nquit\n", "interview", "--plain", draft); status != exitDone {
			t.Errorf("status %d: %s", status, said)
		}
		keptSays(t, draft, "Alder Vale")
	}
}

// Names that Windows keeps for devices are refused before anything is asked; dots
// and spaces at the end are not part of a name.
func onWindowsReserved(t *testing.T, w *windows) {
	for _, name := range []string{"CON", "nul.json", "COM1.json", "LPT9", "a:b.json", "a?.json"} {
		status, said := w.runs("Alder Vale\nquit\n", "interview", "--plain", name)
		if status == exitDone || strings.Contains(said, "Which company") || !strings.Contains(said, "cutbrief: ") {
			t.Errorf("%s: status %d: %s", name, status, said)
		}
	}
	for _, name := range []string{"dot.json.", "space.json "} {
		if status, said := w.runs("Alder Vale\nquit\n", "interview", "--plain", name); status != exitDone {
			t.Errorf("%q: status %d: %s", name, status, said)
		}
		if status, said := w.runs("2026-04-01\nquit\n", "interview", "--plain", name); status != exitDone {
			t.Errorf("%q again: status %d: %s", name, status, said)
		}
		keptSays(t, filepath.Join(w.home, strings.TrimRight(name, ". ")), "Alder Vale", "2026-04-01")
	}
}

// holder holds a file open so that nobody else may read, write or replace it.
const holder = `package main

import (
	"os"
	"syscall"
)

func main() {
	name, _ := syscall.UTF16PtrFromString(os.Args[1])
	if _, err := syscall.CreateFile(name, syscall.GENERIC_READ, 0, nil, syscall.OPEN_EXISTING, 0, 0); err != nil {
		println(err.Error())
		os.Exit(1)
	}
	println("held")
	os.Stdin.Read(make([]byte, 1))
}
`

// While another program holds a file, it is said to be in use, nothing is lost, and
// what was answered is saved beside or once it is let go.
func onWindowsHeld(t *testing.T, w *windows) {
	source := filepath.Join(w.home, "holder.go")
	put(t, source, []byte(holder))
	program := w.built(t, source)
	draft, page := filepath.Join(w.home, "held.json"), filepath.Join(w.home, "held.pdf")
	if status, said := w.runs("Alder Vale\nquit\n", "interview", "--plain", draft); status != exitDone {
		t.Fatal(said)
	}
	put(t, page, []byte("old"))
	for _, file := range []string{draft, page} {
		cmd := w.wine(program, file)
		letGo, _ := cmd.StdinPipe()
		said, _ := cmd.StderrPipe()
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if n, _ := io.ReadAtLeast(said, make([]byte, 10), 4); n < 4 {
			t.Fatalf("%s is not held", file)
		}
		args, typed := []string{"interview", "--plain", draft}, "2026-04-01\nquit\n"
		if file == page {
			args = []string{"brief", draft, "--out", page, "--force"}
		}
		if status, said := w.runs(typed, args...); status == exitDone || !strings.Contains(said, filepath.Base(file)) {
			t.Errorf("%s: status %d: %s", file, status, said)
		}
		letGo.Close()
		cmd.Wait()
		if status, said := w.runs(typed, args...); status != exitDone {
			t.Errorf("%s, let go: status %d: %s", file, status, said)
		}
	}
	keptSays(t, draft, "Alder Vale", "2026-04-01")
}

// A console of either code page shows and takes letters beyond ASCII.
func onWindowsConsole(t *testing.T, w *windows) {
	for _, page := range []string{"65001", "437"} {
		file := "console" + page + ".json"
		d := screentest.Start(t, w.raw("cmd", "/c", "chcp "+page+" >nul & "+w.program+" interview --plain "+file), screentest.Options{Width: 100, Height: 30, Patience: 30 * time.Second})
		d.Sees("millimetres or inches")
		d.Tries("note Bjørk & Łada\r")
		d.Sees("note Bjørk & Łada")
		d.Tries("1\r")
		d.Sees("Which metals")
		d.Tries("quit\r")
		d.Ends()
		v, _, err := store.Load(filepath.Join(w.home, file))
		if err != nil || len(v.Answers) != 1 || v.Answers[0].Note != "Bjørk & Łada" {
			t.Errorf("code page %s: %v: %+v", page, err, v)
		}
	}
}

// Paths with the letter of a drive, from the root or from where one stands there.
func onWindowsDrives(t *testing.T, w *windows) {
	here := "Z:" + strings.ReplaceAll(w.home, "/", `\`)
	for _, path := range []string{`C:\drive.json`, here + `\drive.json`, `Z:relative.json`} {
		for typed := range strings.SplitSeq("Alder Vale,2026-04-01", ",") {
			if status, said := w.runs(typed+"\nquit\n", "interview", "--plain", path); status != exitDone {
				t.Errorf("%s: status %d: %s", path, status, said)
			}
		}
	}
	for _, path := range []string{filepath.Join(w.prefix, "drive_c", "drive.json"), filepath.Join(w.home, "drive.json"), filepath.Join(w.home, "relative.json")} {
		keptSays(t, path, "Alder Vale", "2026-04-01")
	}
	if status, said := w.runs("", "review", here, "--format", "csv"); status != exitDone || !strings.Contains(said, "drive.json") {
		t.Errorf("status %d: %s", status, said)
	}
	if status, said := w.runs("", "review", `Q:\nowhere`); status == exitDone {
		t.Errorf("a drive that is not there: %s", said)
	}
}
