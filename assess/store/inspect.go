package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"cutbrief/assess"
	"cutbrief/rules/message"
)

// Remark is one thing found where somebody looked for faults, and, where it is
// one, what to do.
type Remark struct {
	Text  message.Message
	Wrong bool
	Do    message.Message
}

// Remarks is a list of them as it grows.
type Remarks []Remark

// Say adds what is no fault.
func (r *Remarks) Say(id message.ID, args ...any) {
	*r = append(*r, Remark{Text: message.New(id, args...)})
}

// Wrong adds a fault and what to do about it.
func (r *Remarks) Wrong(do message.Message, id message.ID, args ...any) {
	*r = append(*r, Remark{message.New(id, args...), true, do})
}

const (
	askToWrite  message.ID = "ask for the right to write there, or name another folder"
	askToOpen   message.ID = "ask for the right to open the folder, or name another"
	askToRead   message.ID = "ask for the right to read the folder"
	moveFile    message.ID = "move the file away, or name another folder"
	newerReads  message.ID = "a newer version of cutbrief wrote it, and can read it"
	checkName   message.ID = "check the name; cutbrief interview lists unfinished visits"
	askForFile  message.ID = "ask for the right to read the file"
	makeFolder  message.ID = "make the folder first, or name another file"
	otherFile   message.ID = "name another file"
	formOfVisit message.ID = "the form of a saved visit: cutbrief schema"
)

// Inspect looks at the folder, makes a file in it and takes it away again, and
// reports whether the folder is there. maker says what makes a folder that is
// not. Only a folder of one's own must keep others out: one that was named may
// be meant for a team.
func (f Folder) Inspect(r *Remarks, maker message.ID, own bool) bool {
	info, err := os.Stat(f.Dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := canBeMade(f.Dir); err != nil {
			r.Wrong(askToWrite.Message(), "not there yet, and cannot be made: {1}", Cause(err))
		} else {
			r.Say("not there yet; {1}", maker)
		}
		return false
	case err != nil:
		r.Wrong(askToOpen.Message(), "cannot be opened: {1}", Cause(err))
		return false
	case !info.IsDir():
		r.Wrong(moveFile.Message(), "is a file, not a folder")
		return false
	}
	if err := TryFolder(f.Dir); err != nil {
		r.Wrong(askToWrite.Message(), "cannot be written to: {1}", Cause(err))
	} else {
		r.room(f.Dir)
	}
	r.privacy(f.Dir, info, own)
	r.leftovers(f.Dir)
	return true
}

// canBeMade reports why a folder cannot be made below the nearest one that is
// there, or nil.
func canBeMade(dir string) error {
	for {
		up := filepath.Dir(dir)
		if _, err := os.Stat(up); up == dir || !errors.Is(err, fs.ErrNotExist) {
			return TryFolder(up)
		}
		dir = up
	}
}

// room says how much can still be written, in whole units rounded down.
func (r *Remarks) room(dir string) {
	free, told := FreeSpace(dir)
	switch gigabytes := free / 1e9; {
	case !told:
		r.Say("can be written to")
	case gigabytes >= 1:
		r.Say("can be written to; {1} GB free", message.Count(gigabytes))
	default:
		r.Say("can be written to; {1} MB free", message.Count(free/1e6))
	}
}

// privacy says who else can look into a folder, where its mode tells.
func (r *Remarks) privacy(dir string, info fs.FileInfo, own bool) {
	if filepath.Separator != '/' {
		return // Windows keeps it elsewhere
	}
	switch others := info.Mode().Perm()&0o077 != 0; {
	case !others:
		r.Say("only you can look into it")
	case own:
		r.Wrong(message.New("chmod 700 {1}", message.Name(ShellWord(dir))), "others on this machine can look into it")
	default:
		r.Say("others can look into it, as a shared folder needs")
	}
}

// leftovers counts what programs that were ended within a save have left.
func (r *Remarks) leftovers(dir string) {
	files, _ := os.ReadDir(dir) // that it cannot be read was said above
	left := 0
	for _, f := range files {
		if Unfinished(f) {
			left++
		}
	}
	if left > 0 {
		*r = append(*r, Remark{Text: message.Counted(left, "{1} file of a save that did not end; the next save here clears up", "{1} files of a save that did not end; the next save here clears up")})
	}
}

// InspectLists says whether the folder of the user's own lists is there; what is in
// it is looked at with the lists.
func (f Folder) InspectLists(r *Remarks) {
	if _, err := os.Stat(f.Dir); errors.Is(err, fs.ErrNotExist) {
		r.Say("not there; make it to keep lists of your own")
	}
}

// InspectVisits looks at the folder that visits are kept in: the usual one, or one
// that was named by a flag or a variable.
func (f Folder) InspectVisits(r *Remarks, by string) {
	if by == "" {
		r.Say("the usual place")
	} else {
		r.Say("named by {1}", message.Name(by))
	}
	if f.Inspect(r, "the first visit makes it", by == "") {
		f.countVisits(r)
	}
}

// countVisits counts the visits in the folder, and names the first of those that
// cannot be read.
func (f Folder) countVisits(r *Remarks) {
	entries, err := f.List()
	if err != nil {
		r.Wrong(askToRead.Message(), "its files cannot be listed: {1}", Cause(err))
		return
	}
	var broken []Entry
	unfinished := 0
	for _, e := range entries {
		switch {
		case e.Err != nil:
			broken = append(broken, e)
		case e.Open > 0:
			unfinished++
		}
	}
	read := len(entries) - len(broken)
	*r = append(*r, Remark{Text: message.Counted(read, "{1} visit, {2} with open questions", "{1} visits, {2} with open questions", message.Count(unfinished))})
	const most = 3
	for _, e := range broken[:min(len(broken), most)] {
		r.Wrong(LoadHint(e.Err), "cannot be read, and is left as it is: {1}", e.Err)
	}
	if more := len(broken) - most; more > 0 {
		r.Say("and {1} more that cannot be read", message.Count(more))
	}
}

// LoadHint says what to do about a visit that cannot be read or begun.
func LoadHint(err error) message.Message {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return checkName.Message()
	case errors.Is(err, fs.ErrPermission):
		return askForFile.Message()
	case errors.Is(err, assess.ErrNewerFormat):
		return newerReads.Message()
	case errors.Is(err, errNoFolder):
		return makeFolder.Message()
	case errors.Is(err, errReserved):
		return otherFile.Message()
	}
	return formOfVisit.Message()
}

// FolderProblem says what to do about a folder that cannot be read.
func FolderProblem(dir string, err error) error {
	hint := message.ID("name the folder that holds the visits: cutbrief review DIR")
	switch {
	case errors.Is(err, fs.ErrNotExist):
		hint = "name the folder: cutbrief review DIR"
	case errors.Is(err, fs.ErrPermission):
		hint = "ask for the right to read the folder"
	}
	return message.WithHint(message.Errorf("read {1}: {2}", message.Name(dir), Cause(err)), hint)
}
