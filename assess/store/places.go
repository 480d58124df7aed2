package store

import (
	"errors"
	"path/filepath"
	"strings"

	"cutbrief/rules/message"
)

// Places are where the files of a user are on a system, as its environment tells.
type Places struct {
	Getenv func(name string) string
	System string // as the Go runtime names it
}

// ErrNoHome means the system does not say where the user's files are.
var ErrNoHome = errors.New("no home folder is set")

// FolderKind is one kind of folder of the user, on each system.
type FolderKind struct {
	xdg, linux, mac, windows string
}

// The folders of the user that files of the program are kept in.
var (
	DataFolder   = FolderKind{"XDG_DATA_HOME", ".local/share", "Library/Application Support", "AppData"}
	ConfigFolder = FolderKind{"XDG_CONFIG_HOME", ".config", "Library/Application Support", "AppData"}
	CacheFolder  = FolderKind{"XDG_CACHE_HOME", ".cache", "Library/Caches", "LocalAppData"}
)

// Find is a file or folder of the program in a folder of the user. The XDG Base
// Directory specification says to pass over a variable that is not an absolute
// path.
func (p Places) Find(kind FolderKind, below ...string) (string, error) {
	base := p.Getenv(kind.xdg)
	switch {
	case p.System == "windows":
		base = p.Getenv(kind.windows)
	case p.System == "darwin":
		base = p.underHome(kind.mac)
	case !filepath.IsAbs(base):
		base = p.underHome(kind.linux)
	}
	if base == "" {
		return "", ErrNoHome
	}
	return filepath.Join(append([]string{base, "cutbrief"}, below...)...), nil
}

func (p Places) underHome(path string) string {
	home := p.Getenv("HOME")
	if home == "" {
		return ""
	}
	return filepath.Join(home, filepath.FromSlash(path))
}

// Visits is the folder visits are kept in: the flag, else CUTBRIEF_DIR, else
// the place the user's system keeps data in. It need not exist.
func (p Places) Visits(flag string) (string, error) {
	if flag != "" {
		return flag, nil
	}
	if dir := p.Getenv("CUTBRIEF_DIR"); dir != "" {
		return dir, nil
	}
	dir, err := p.Find(DataFolder, "visits")
	if err != nil {
		return "", message.WithHint(err, "name a folder with --dir or CUTBRIEF_DIR")
	}
	return dir, nil
}

// Own is the user's own file of a kind, such as systems: the one the flag
// names, else the variable, which named tells; else NAME.csv in the
// configuration folder, which need not exist, and named is "". path is "" if
// there is no such folder.
func (p Places) Own(name, flag string) (path, named string) {
	variable := "CUTBRIEF_" + strings.ToUpper(name)
	if flag != "" {
		return flag, "--" + name
	}
	if path := p.Getenv(variable); path != "" {
		return path, variable
	}
	path, _ = p.Find(ConfigFolder, name+".csv")
	return path, ""
}
