//go:build linux || darwin

package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"cutbrief/assess/screen/screentest"
	"cutbrief/assess/store"
)

// killsVariable sets the number of rounds of the kill test.
const killsVariable = "CUTBRIEF_KILLS"

// usualKills are enough to find a save that is not whole; 500 and more are for
// now and then.
const usualKills = 25

// spoken are the first questions of an interview, with what is answered.
var spoken = []struct{ asks, said string }{
	{"millimetres or inches", "1"}, {"Which metals", "1"}, {"What is the thickest", "12 mm"}, {"Is this repair work", "1"},
	{"How is the torch guided", "1"}, {"What annoys you most", "1"}, {"", ""},
}

// kills is how many rounds there are, and what makes their moments.
func kills() (rounds int, seed uint64) {
	rounds = usualKills
	if n, err := strconv.Atoi(os.Getenv(killsVariable)); err == nil {
		rounds = n
	}
	return rounds, uint64(time.Now().UnixNano())
}

// life is one interview that is killed.
type life struct {
	dir      string
	accepted atomic.Int32 // answers that were acknowledged
}

func (l *life) file() string { return filepath.Join(l.dir, "a.json") }
func (l *life) half() string { return filepath.Join(l.dir, ".a.json.cutbrief") }

// answers goes through the questions until the program is gone. An answer
// counts as accepted once the next question is on the screen and the header no
// longer says that a save is under way.
func (l *life) answers(d *screentest.Terminal) {
	for i := range len(spoken) - 1 {
		if !d.Until(func(s string) bool { return strings.Contains(s, spoken[i].asks) }) {
			return
		}
		d.Tries(spoken[i].said + "\r")
		next := spoken[i+1].asks
		if !d.Until(func(s string) bool {
			top, _, _ := strings.Cut(s, "\n")
			return strings.Contains(s, next) && !strings.Contains(s, spoken[i].asks) && strings.Contains(top, " left") && !strings.Contains(top, "saving")
		}) {
			return
		}
		l.accepted.Add(1)
	}
}

// killedAtRandom kills at any moment of an interview.
func (l *life) killedAtRandom(d *screentest.Terminal, chance *rand.Rand) {
	time.Sleep(time.Duration(chance.Int64N(int64(250 * time.Millisecond)))) // the moment is the point
	d.Cmd.Process.Kill()
}

// killedInSave kills as soon as the file of one of the saves is there, or at
// the end if no save was caught at it.
func (l *life) killedInSave(d *screentest.Terminal, answered <-chan struct{}, chance *rand.Rand) {
	defer d.Cmd.Process.Kill()
	was := false
	for left := 1 + chance.IntN(6); left > 0; {
		select {
		case <-answered:
			return
		default:
		}
		_, err := os.Lstat(l.half())
		if is := err == nil; is != was {
			was = is
			if is {
				left--
			}
		}
	}
}

// check reads the draft as it was left. It must be whole, and hold all that was
// accepted.
func (l *life) check(t *testing.T) (kept int) {
	t.Helper()
	accepted := int(l.accepted.Load())
	v, unknown, err := store.Load(l.file())
	if errors.Is(err, fs.ErrNotExist) && accepted == 0 {
		return 0
	}
	if err != nil || len(unknown) > 0 {
		t.Fatalf("%d answers accepted, the draft: %v %v", accepted, err, unknown)
	}
	if len(v.Answers) < accepted {
		t.Errorf("%d answers accepted, %d kept", accepted, len(v.Answers))
	}
	for i, a := range v.Answers {
		if want := spoken[i].said; want != "" && a.Said != want && len(a.Chosen) == 0 {
			t.Errorf("answer %d is kept as %q, want %q", i+1, a.Said, want)
		}
	}
	return len(v.Answers)
}

// restart goes on with the draft, gives one answer and leaves. Everything must
// be there and nothing else in the folder.
func (l *life) restart(t *testing.T, kept int) {
	t.Helper()
	cmd := exec.Command("cutbrief", "interview", "--plain", l.file())
	cmd.Env = append(os.Environ(), "HOME="+l.dir)
	cmd.Stdin = strings.NewReader("not known\nquit\n")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	v, _, err := store.Load(l.file())
	if err != nil || len(v.Answers) != kept+1 {
		t.Errorf("after the restart: %v, want %d answers and one more", err, kept)
	}
	if files, err := os.ReadDir(l.dir); err != nil || len(files) != 1 {
		t.Errorf("the folder holds %v, %v", files, err)
	}
}

// TestKilled kills interviews at random moments, every second one inside a
// save, and looks at what is left.
func TestKilled(t *testing.T) {
	rounds, seed := kills()
	chance := rand.New(rand.NewPCG(seed, 0))
	inside, accepted, most := 0, 0, 0
	for n := range rounds {
		l := &life{dir: t.TempDir()}
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			d := draw(t, l.dir, "interview", "a.json")
			answered := make(chan struct{})
			go func() {
				defer close(answered)
				l.answers(d)
			}()
			if n%2 == 0 {
				l.killedAtRandom(d, chance)
			} else {
				l.killedInSave(d, answered, chance)
			}
			<-d.Over
			<-answered
			if _, err := os.Lstat(l.half()); err == nil {
				inside++
			}
			l.restart(t, l.check(t))
		})
		accepted += int(l.accepted.Load())
		most = max(most, int(l.accepted.Load()))
	}
	t.Logf("%d rounds: killed inside a save in %d, %d answers accepted, at most %d in a round; seed %d", rounds, inside, accepted, most, seed)
	if rounds >= usualKills && (inside == 0 || accepted == 0) {
		t.Error("no round was killed inside a save, or none had an answer accepted")
	}
}
