package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/assess/store"
	"cutbrief/assess/store/atomicfile"
)

// placesPart looks at the folders things are kept in.
func (a *app) placesPart(dir string) part {
	return part{"Where things are kept", []notice{a.visitsNotice(dir), a.practiceNotice(), a.configNotice(), a.cacheNotice()}}
}

func (a *app) visitsNotice(flag string) notice {
	n := notice{What: "visits"}
	dir, err := a.visitsDir(flag)
	if err != nil {
		n.wrong("name a folder with --dir or CUTBRIEF_DIR", "nowhere: %s", err)
		return n
	}
	chosen := a.chosenBy(flag, "--dir", "CUTBRIEF_DIR")
	n.say("%s", dir)
	n.say("%s", textOr(chosen, "the usual place"))
	if n.folder(dir, "the first visit makes it", chosen == "") {
		n.visits(dir)
	}
	return n
}

// chosenBy says what chose a place: a flag, a variable, or nothing.
func (w *world) chosenBy(flag, flagName, variable string) string {
	switch {
	case flag != "":
		return "named by " + flagName
	case w.env(variable) != "":
		return "named by " + variable
	}
	return ""
}

// textOr is the text, or another where there is none.
func textOr(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// folder looks at a folder, and reports whether it is there. Only a folder of
// our own must keep others out: one that was named may be meant for a team.
func (n *notice) folder(dir, maker string, own bool) bool {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := canBeMade(dir); err != nil {
			n.wrong("ask for the right to write there, or name another folder", "not there yet, and cannot be made: %s", reason(err))
		} else {
			n.say("not there yet; %s", maker)
		}
		return false
	case err != nil:
		n.wrong("ask for the right to open the folder, or name another", "cannot be opened: %s", reason(err))
		return false
	case !info.IsDir():
		n.wrong("move the file away, or name another folder", "is a file, not a folder")
		return false
	}
	if err := atomicfile.Try(dir); err != nil {
		n.wrong("ask for the right to write there, or name another folder", "cannot be written to: %s", reason(err))
	} else {
		n.say("can be written to%s", spare(dir))
	}
	n.privacy(dir, info, own)
	n.leftovers(dir)
	return true
}

// canBeMade reports why a folder cannot be made below the nearest one that is
// there, or nil.
func canBeMade(dir string) error {
	for {
		up := filepath.Dir(dir)
		if _, err := os.Stat(up); up == dir || !errors.Is(err, fs.ErrNotExist) {
			return atomicfile.Try(up)
		}
		dir = up
	}
}

// spare says how much can still be written: in whole steps of 10, rounded down.
func spare(dir string) string {
	free, told := atomicfile.Free(dir)
	switch gigabytes := free / 1e9; {
	case !told:
		return ""
	case gigabytes >= 1:
		return fmt.Sprintf("; %d GB free", gigabytes)
	}
	return fmt.Sprintf("; %d MB free", free/1e6)
}

// privacy says who else can look into a folder, where its mode tells.
func (n *notice) privacy(dir string, info fs.FileInfo, own bool) {
	if filepath.Separator != '/' {
		return // Windows keeps it elsewhere
	}
	switch others := info.Mode().Perm()&0o077 != 0; {
	case !others:
		n.say("only you can look into it")
	case own:
		n.wrong("chmod 700 "+shellWord(dir), "others on this machine can look into it")
	default:
		n.say("others can look into it, as a shared folder needs")
	}
}

// leftovers counts what programs that were ended within a save have left.
func (n *notice) leftovers(dir string) {
	files, _ := os.ReadDir(dir) // that it cannot be read was said above
	left := 0
	for _, f := range files {
		if atomicfile.Unfinished(f) {
			left++
		}
	}
	if left > 0 {
		n.say("%s of a save that did not end; the next save here clears up", counted(left, "file"))
	}
}

// visits counts the visits in a folder, and names those that cannot be read.
func (n *notice) visits(dir string) {
	entries, err := store.Folder{Dir: dir}.List()
	if err != nil {
		n.wrong("ask for the right to read the folder", "its files cannot be listed: %s", reason(err))
		return
	}
	var broken []store.Entry
	unfinished := 0
	for _, e := range entries {
		switch {
		case e.Err != nil:
			broken = append(broken, e)
		case e.Open > 0:
			unfinished++
		}
	}
	n.say("%s, %d with open questions", counted(len(entries)-len(broken), "visit"), unfinished)
	const most = 3
	for _, e := range broken[:min(len(broken), most)] {
		n.wrong(loadHint(e.Err), "cannot be read, and is left as it is: %s", e.Err)
	}
	if more := len(broken) - most; more > 0 {
		n.say("and %d more that cannot be read", more)
	}
}

func (a *app) practiceNotice() notice {
	n := notice{What: "practice"}
	path, err := a.progressFile()
	if err != nil {
		n.wrong("set HOME", "nowhere: no home folder is set")
		return n
	}
	n.say("%s", path)
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		n.say("not there yet; the first practice makes it")
		return n
	}
	if _, err := loadProgress(path); err != nil {
		n.wrong("move the file away to begin anew", "cannot be read: %s", err)
		return n
	}
	n.say("can be read")
	return n
}

// configNotice names the folder of the user's own lists; what is in it is looked
// at with the lists.
func (a *app) configNotice() notice {
	n := notice{What: "your lists"}
	base, err := a.userDir("XDG_CONFIG_HOME", ".config")
	if err != nil {
		n.say("nowhere: %s", err)
		return n
	}
	dir := filepath.Join(base, "cutbrief")
	n.say("%s", dir)
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		n.say("not there; make it to keep lists of your own")
	}
	return n
}

func (a *app) cacheNotice() notice {
	n := notice{What: "cache"}
	dir, err := a.cacheDir()
	if err != nil {
		n.say("nowhere: %s; a review only takes longer", err)
		return n
	}
	n.say("%s", dir)
	n.folder(dir, "the first review makes it", a.env("XDG_CACHE_HOME") == "") // names of customers lie there
	return n
}
