package main

import (
	"errors"
	"path/filepath"
)

// errNoHome means the system does not say where the user's files are.
var errNoHome = errors.New("no home folder is set")

// visitsDir is the folder visits are kept in: the flag, else CUTBRIEF_DIR, else
// the place the user's system keeps data in. It need not exist.
func (w *world) visitsDir(flag string) (string, error) {
	if flag != "" {
		return flag, nil
	}
	if dir := w.env("CUTBRIEF_DIR"); dir != "" {
		return dir, nil
	}
	base, err := w.userDir("XDG_DATA_HOME", ".local", "share")
	if err != nil {
		return "", fail(err, "name a folder with --dir or CUTBRIEF_DIR")
	}
	return filepath.Join(base, "cutbrief", "visits"), nil
}

// systemsFile is the user's own range of systems: the flag, else
// CUTBRIEF_SYSTEMS. With neither it is the file in the configuration folder,
// which need not exist (named is false then).
func (w *world) systemsFile(flag string) (path string, named bool) {
	if flag != "" {
		return flag, true
	}
	if path := w.env("CUTBRIEF_SYSTEMS"); path != "" {
		return path, true
	}
	base, err := w.userDir("XDG_CONFIG_HOME", ".config")
	if err != nil {
		return "", false
	}
	return filepath.Join(base, "cutbrief", "systems.csv"), false
}

// userDir is the user's folder for one kind of file. The XDG Base Directory
// specification says to pass over a variable that is not an absolute path.
func (w *world) userDir(xdg string, below ...string) (string, error) {
	switch w.goos {
	case "windows":
		return under(w.env("AppData"))
	case "darwin":
		return under(w.env("HOME"), "Library", "Application Support")
	}
	if dir := w.env(xdg); filepath.IsAbs(dir) {
		return dir, nil
	}
	return under(w.env("HOME"), below...)
}

// under joins a path below a folder that must be known.
func under(home string, below ...string) (string, error) {
	if home == "" {
		return "", errNoHome
	}
	return filepath.Join(append([]string{home}, below...)...), nil
}
