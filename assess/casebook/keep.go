package casebook

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/assess/store"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
)

// LoadProgress reads the progress so far; none is no error.
func LoadProgress(path string) (p Progress, err error) {
	var data []byte
	switch info, failed := os.Stat(path); {
	case errors.Is(failed, fs.ErrNotExist):
		return p, nil
	case failed != nil:
		err = failed
	case !info.Mode().IsRegular():
		err = store.ErrIrregular
	case info.Size() > ProgressMost:
		err = ErrNotProgress
	default:
		data, err = os.ReadFile(path)
	}
	if err == nil {
		p, err = DecodeProgress(data)
	}
	if err != nil {
		return p, message.WithHint(message.Errorf("read {1}: {2}", message.Name(path), store.Cause(err)), "move the file away to begin anew")
	}
	return p, nil
}

// InspectProgress says whether the progress so far can be read.
func InspectProgress(r *store.Remarks, path string) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		r.Say("not there yet; the first practice makes it")
	} else if _, err := LoadProgress(path); err != nil {
		r.Wrong(message.ID("move the file away to begin anew").Message(), "cannot be read: {1}", err)
	} else {
		r.Say("can be read")
	}
}

// AddProgress puts a practice behind those kept at path, also behind one that
// another program has kept meanwhile, and returns them all. What cannot be read
// is never written over.
func AddProgress(path string, one Practice) (p Progress, err error) {
	var unread error
	if err = os.MkdirAll(filepath.Dir(path), 0o700); err == nil {
		err = store.ReplaceFile(path, func() ([]byte, error) {
			if p, unread = LoadProgress(path); unread != nil {
				return nil, unread
			}
			p.Add(one)
			return p.Encode()
		})
	}
	if err != nil && unread == nil {
		err = message.Errorf("keep the progress in {1}: {2}", message.Name(path), store.Cause(err))
	}
	return p, err
}

// List are the cases of a file of one's own, checked by the rules for some systems
// to offer. A file with an error is refused: a practice must be fair.
func List(offered system.Range) store.List[[]Customer] {
	return store.List[[]Customer]{
		Name: "cases", Command: "practice", BuiltIn: func() []Customer { return nil },
		Read: func(r io.Reader, _ string) ([]Customer, []tabular.Finding) {
			list, findings := Read(r)
			for i := range list {
				findings = append(findings, Check(&list[i], offered)...)
			}
			return list, findings
		},
		Sum: func(list []Customer, path message.Name, _ int) []message.Message {
			return []message.Message{message.New("{1}: {2}", path, message.Counted(len(list), "{1} case read", "{1} cases read"))}
		},
	}
}

// SeedFrom is a number made of an identifier, short enough to be told on.
func SeedFrom(id string) uint64 {
	h := fnv.New32a()
	io.WriteString(h, id)
	return uint64(h.Sum32() % 100000)
}

// Wish says which customer to meet: one by name, one made from a seed that
// somebody chose, or the one that is due. Level 0 is any.
type Wish struct {
	Name   string
	Seed   uint64
	Seeded bool
	Level  int
}

// Meet finds the customer of a wish among those that are known, or makes one.
func (p *Progress) Meet(w Wish, known []Customer, offered system.Range) (Customer, error) {
	if i := slices.IndexFunc(known, func(c Customer) bool { return c.Name == w.Name }); i >= 0 {
		one := known[i]
		one.Seed = w.Seed
		return one, nil
	}
	if !w.Seeded {
		if one, ok := p.Draw(known, w.Level); ok {
			one.Seed = w.Seed
			return one, nil
		}
	}
	if w.Level == 0 {
		w.Level = 1 + int(w.Seed%5)
	}
	one, ok := p.Make(w.Seed, w.Level, offered, w.Seeded)
	if !ok {
		return one, message.WithHint(message.Errorf("no customer can be made for the systems of {1}", message.Name(offered.Name)), "try another --seed or --level, or a --case")
	}
	return one, nil
}

// Listed is customers of a level as a table, of all for 0; how each speaks is for
// the trainee to find out.
func Listed(words *message.Catalog, list []Customer, level int) string {
	say := func(id message.ID) string { return words.Print(id.Message()) }
	var b strings.Builder
	fmt.Fprintf(&b, "%-18s %-6s %-8s %s\n", say("CASE"), say("LEVEL"), say("MINUTES"), say("WHO"))
	for _, c := range list {
		if level == 0 || c.Level == level {
			fmt.Fprintf(&b, "%-18s %-6d %-8d %s\n", sanitize.Line(c.Name), c.Level, c.Minutes, sanitize.Line(c.Company()))
		}
	}
	return b.String() + "\n" + say("All invented. Meet one with: cutbrief practice --case NAME") + "\n"
}

// Again is the command that meets the same customer again; file is the one with
// the case, "" if it is built in.
func (c *Customer) Again(file string) message.Name {
	command := "cutbrief practice"
	if file != "" {
		command += " --cases " + store.ShellWord(file)
	}
	if c.Name != "" {
		return message.Name(fmt.Sprintf("%s --case %s --seed %d", command, c.Name, c.Seed))
	}
	return message.Name(fmt.Sprintf("%s --seed %d --level %d", command, c.Seed, c.Level))
}

// Closing is what is said behind a practice: the progress, where it was marked, and
// how to meet the same customer again, who may be of a file of cases.
func (s *Session) Closing(words *message.Catalog, p Progress, marked bool, file string) string {
	text := ""
	if marked {
		text = "\n" + p.Chart(words) + Repetition(words) + "\n"
	}
	return text + "\n" + words.Print(message.New("This customer again: {1}", s.Customer.Again(file))) + "\n"
}
