package scan

import (
	"errors"
	"io/fs"

	"golang.org/x/sys/unix"
)

// stamp looks at a file of the folder.
func (d *folder) stamp(name string) (Stamp, error) {
	var st unix.Stat_t
	if err := again(func() error { return unix.Fstatat(int(d.f.Fd()), name, &st, 0) }); err != nil {
		return Stamp{}, err
	}
	return stampOf(&st), regular(&st)
}

func stampOf(st *unix.Stat_t) Stamp {
	return Stamp{Size: st.Size, Modified: st.Mtim.Nano(), Changed: st.Ctim.Nano(), Inode: st.Ino}
}

func regular(st *unix.Stat_t) error {
	if st.Mode&unix.S_IFMT != unix.S_IFREG {
		return errRegular
	}
	return nil
}

// read reads a file of the folder. It does not wait for the other end of a pipe.
func (d *folder) read(name string, most int64, buf *[]byte, stamp *Stamp) (data []byte, err error) {
	fd := -1
	err = again(func() (err error) {
		fd, err = unix.Openat(int(d.f.Fd()), name, unix.O_RDONLY|unix.O_CLOEXEC|unix.O_NONBLOCK, 0)
		return err
	})
	if err != nil {
		return nil, named(err)
	}
	defer unix.Close(fd) // only read: nothing to lose
	var st unix.Stat_t
	if err := unix.Fstat(fd, &st); err != nil {
		return nil, named(err)
	}
	*stamp = stampOf(&st)
	if err := regular(&st); err != nil {
		return nil, err
	}
	return fill(func(b []byte) (n int, err error) {
		err = again(func() (err error) { n, err = unix.Read(fd, b); return err })
		return n, err
	}, st.Size, most, buf)
}

// again repeats a call that a signal interrupted.
func again(call func() error) error {
	for {
		if err := call(); !errors.Is(err, unix.EINTR) {
			return err
		}
	}
}

// named gives an error the standard library's name, so that it reads the same on
// every system.
func named(err error) error {
	for _, known := range []error{fs.ErrNotExist, fs.ErrPermission} {
		if errors.Is(err, known) {
			return known
		}
	}
	return err
}
