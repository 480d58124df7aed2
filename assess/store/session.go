package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Session is the work on one visit: where it is kept, and what was written.
type Session struct {
	Visit  *assess.Visit
	Folder Folder       // where a new visit gets its file
	Path   string       // "" until a new visit is first saved
	Range  system.Range // what is recommended is noted at every save
	Now    func() time.Time
	Home   string            // what "~" stands for, "" if it stands for nothing
	Watch  *assess.Stopwatch // nil where no interview is held
	Saved  bool              // there is a file at Path
	Other  string            // the file another program changed meanwhile, which is kept too
}

// Open finds the visit at path, or begins one to be saved there, of which the
// folder must be there: better to say so now than after the first answer. It
// creates nothing.
func Open(path string, begin func() *assess.Visit) (s *Session, unknown []string, err error) {
	if err := deviceName(path); err != nil {
		return nil, nil, err
	}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return &Session{Visit: begin(), Path: path}, nil, missingFolder(path)
	}
	v, unknown, err := Load(path)
	return &Session{Visit: v, Path: path, Saved: true}, unknown, err
}

// errNoFolder means that the folder of a file is not there.
var errNoFolder = errors.New("there is no folder")

// errReserved means that a file is named like a device.
var errReserved = errors.New("Windows keeps this name for a device")

// deviceName refuses the names that Windows keeps for devices, in any folder and with
// any ending: CON, NUL.json. What is written there is gone.
func deviceName(path string) error {
	if runtime.GOOS == "windows" && !filepath.IsLocal(filepath.Base(path)) {
		return message.Errorf("{1}: {2}", message.Name(path), errReserved)
	}
	return nil
}

func missingFolder(path string) error {
	if info, err := os.Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		return message.Errorf("{1}: {2} {3}", message.Name(path), errNoFolder, message.Name(filepath.Dir(path)))
	}
	return nil
}

// Save keeps the visit, with what is recommended by now, and says where. The
// folder and the name of a new visit are made now, when there is something to
// save. If another program changed the file meanwhile both are kept: the visit
// goes on in a file beside it.
func (s *Session) Save(v *assess.Visit) (string, error) {
	if s.Path == "" {
		path, err := s.Folder.NewPath(v)
		if err != nil {
			return "", err
		}
		s.Path = path
	}
	job, _ := v.Job()
	v.Record(rules.Evaluate(job, s.Range), system.Fingerprint(s.Range))
	if s.Watch != nil {
		s.Watch.Lap(v, s.Now())
	}
	err := Save(s.Path, v, s.Now())
	if errors.Is(err, ErrChanged) && s.Other == "" {
		err = s.saveBeside(v)
	}
	if cause := Cause(err); cause != err {
		err = message.Errorf("{1}: {2}", message.Name(s.Path), cause)
	}
	s.Saved = s.Saved || err == nil
	return s.Path, err
}

// saveBeside goes on in a file of its own. The other program's stays as it is.
func (s *Session) saveBeside(v *assess.Visit) error {
	path, err := Folder{Dir: filepath.Dir(s.Path)}.NewPath(v)
	if err != nil {
		return err
	}
	if err := Save(path, v, s.Now()); err != nil {
		return err
	}
	s.Other, s.Path = s.Path, path
	return nil
}

// MoveTo keeps the visit in another place from the next save on: in a folder
// under a name of its own, or in a file that is not there yet. What was saved
// before stays where it is.
func (s *Session) MoveTo(place string) error {
	if below, atHome := strings.CutPrefix(place, "~/"); atHome && s.Home != "" {
		place = filepath.Join(s.Home, below)
	}
	switch {
	case place == "":
		return message.Errorf("no place is named")
	case IsFolder(place):
		s.Folder, s.Path = Folder{Dir: filepath.Clean(place)}, ""
	default:
		if _, err := os.Lstat(place); err == nil {
			return message.Errorf("{1}: {2}", message.Name(place), ErrExists)
		}
		if err := errors.Join(deviceName(place), missingFolder(place)); err != nil {
			return err
		}
		s.Path = place
	}
	s.Saved, s.Other = false, ""
	return nil
}

// SavedAt is where the visit is kept, "" if it is not yet.
func (s *Session) SavedAt() string {
	if !s.Saved {
		return ""
	}
	return s.Path
}

// IsFolder reports whether path names a folder. One that does not exist is
// named as a folder by a separator at its end; writing there will say so.
func IsFolder(path string) bool {
	if path == "" || os.IsPathSeparator(path[len(path)-1]) {
		return path != ""
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// ShellWord quotes a path that a shell would take apart.
func ShellWord(path string) string {
	if strings.ContainsAny(path, " '\"()&;$`|<>*?!#~") && filepath.Separator == '/' {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	if strings.Contains(path, " ") {
		return `"` + path + `"`
	}
	return path
}
