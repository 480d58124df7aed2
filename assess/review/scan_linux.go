package review

import (
	"errors"
	"io/fs"

	"golang.org/x/sys/unix"
)

// stamp looks at a file of the folder.
func (d *directory) stamp(name string) (stamp, error) {
	var st unix.Stat_t
	if err := again(func() error { return unix.Fstatat(int(d.f.Fd()), name, &st, 0) }); err != nil {
		return stamp{}, err
	}
	return stampOf(&st), regular(&st)
}

func stampOf(st *unix.Stat_t) stamp {
	return stamp{size: st.Size, modified: st.Mtim.Nano(), changed: st.Ctim.Nano(), inode: st.Ino}
}

func regular(st *unix.Stat_t) error {
	if st.Mode&unix.S_IFMT != unix.S_IFREG {
		return errRegular
	}
	return nil
}

// read reads a file of the folder. It does not wait for the other end of a pipe.
func (d *directory) read(name string, most int64, buf *[]byte, stamp *stamp) (data []byte, err error) {
	fd := -1
	err = again(func() (err error) {
		fd, err = unix.Openat(int(d.f.Fd()), name, unix.O_RDONLY|unix.O_CLOEXEC|unix.O_NONBLOCK, 0)
		return err
	})
	if err != nil {
		return nil, plainly(err)
	}
	defer unix.Close(fd) // only read: nothing to lose
	var st unix.Stat_t
	if err := unix.Fstat(fd, &st); err != nil {
		return nil, plainly(err)
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

// plainly gives an error the standard library's name, so that it reads the same on
// every system.
func plainly(err error) error {
	for _, known := range []error{fs.ErrNotExist, fs.ErrPermission} {
		if errors.Is(err, known) {
			return known
		}
	}
	return err
}
