package main

import (
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"testing"
)

// Every command waits until all packages are initialised. A list that is parsed or
// an expression that is compiled there shows in how often memory is asked for: a
// small expression takes hundreds of times. Our largest package, with the catalogue
// of questions, takes some 150, all of ours together some 450; a third more is
// left to them. This package is left out: here its tests are in it.
func TestNothingIsWorkedOutBeforeItIsAskedFor(t *testing.T) {
	const mostOfOne, mostOfAll = 200, 600
	cmd := exec.Command("cutbrief", "version")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	all := 0
	for _, line := range regexp.MustCompile(`init (cutbrief/(?:assess|report|rules)\S*) @.* (\d+) allocs`).FindAllSubmatch(out, -1) {
		n, err := strconv.Atoi(string(line[2]))
		if err != nil {
			t.Fatal(err)
		}
		if all += n; n > mostOfOne {
			t.Errorf("%s asks for memory %d times before it is used, want %d or fewer", line[1], n, mostOfOne)
		}
	}
	if all == 0 || all > mostOfAll {
		t.Errorf("our packages ask for memory %d times before they are used, want %d or fewer", all, mostOfAll)
	}
}
