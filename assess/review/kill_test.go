package review

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// indexing tells the test program to read a folder with an index, over and over.
const indexing = "CUTBRIEF_INDEXING"

// TestKilledIndexing kills a program that reads a folder with an index and changes
// it: at random moments, and every second time as soon as it has begun to write. The
// next reading gives the same rows, with whatever index was left.
// CUTBRIEF_KILLS=2000 is for now and then.
func TestKilledIndexing(t *testing.T) {
	if dir := os.Getenv(indexing); dir != "" {
		for n := 0; ; n++ {
			read(t, dir, Options{Index: filepath.Join(dir, "x.index"), Program: strconv.Itoa(n)})
		}
	}
	files := map[string]string{"torn.json": "{"}
	for i := range 20 {
		files[fmt.Sprintf("%d.json", i)] = encoded(t, visit(t, "company: "+strconv.Itoa(i)))
	}
	dir := folder(t, files)
	index := filepath.Join(dir, "x.index")
	rounds, inside, kept, seed := 25, 0, 0, uint64(time.Now().UnixNano())
	if n, err := strconv.Atoi(os.Getenv("CUTBRIEF_KILLS")); err == nil {
		rounds = n
	}
	chance := rand.New(rand.NewPCG(seed, 0))
	there := func(path string) bool { _, err := os.Lstat(path); return err == nil }
	for n := range rounds {
		cmd := exec.Command(os.Args[0], "-test.run=^TestKilledIndexing$")
		cmd.Env = append(os.Environ(), indexing+"="+dir)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		for began := time.Now(); !there(index) && time.Since(began) < time.Minute; { // until it is at work
		}
		if n%2 == 0 {
			time.Sleep(time.Duration(chance.Int64N(int64(10 * time.Millisecond))))
		} else {
			for began := time.Now(); !there(index+".new") && time.Since(began) < time.Minute; {
			}
		}
		cmd.Process.Kill()
		cmd.Wait()
		if there(index + ".new") {
			inside++
			os.Remove(index + ".new") // an hour later
		}
		if got := known(t, dir, Options{Index: index, Program: "0"}); got > 0 {
			kept++
		}
		if known(t, dir, Options{Index: index, Program: "0"}) != len(files) {
			t.Error("no index was made after the kill")
		}
		os.Remove(index)
	}
	t.Logf("%d rounds: killed inside the writing in %d, an index of use left in %d; seed %d", rounds, inside, kept, seed)
	if inside == 0 {
		t.Error("no round was killed inside the writing")
	}
}
