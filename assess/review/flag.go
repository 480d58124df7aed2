package review

import (
	"math/bits"
	"slices"
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// Flag is one reason for a second look.
type Flag uint8

// The flags, gravest first.
const (
	Damaged Flag = iota
	Foreign
	Newer
	Unreadable
	Smaller
	Differs
	StillOpen
	Contradicted
	Unreasoned
	Unclear
	Unproven
	Unsafe
	Overdue
	Twice
	flags
)

// FlagSet is a set of flags.
type FlagSet uint32

// Has reports whether a flag is raised.
func (s FlagSet) Has(f Flag) bool { return s&(1<<f) != 0 }

// With is the set and a flag.
func (s FlagSet) With(f Flag) FlagSet { return s | 1<<f }

// Count is how many flags are raised.
func (s FlagSet) Count() int { return bits.OnesCount32(uint32(s)) }

// FlagKind says what a flag is called and when it is raised.
type FlagKind struct {
	ID   string     // as filtered by and written
	Name message.ID // for a reader
	Rule message.ID // when it is raised
}

// kinds are the flags in the order of their numbers. The rules are our own,
// common practice without a source: they start a conversation and decide nothing.
var kinds = [flags]FlagKind{
	Damaged:      {"damaged", "damaged file", "the file is not the whole, well-formed record of a visit"},
	Foreign:      {"foreign", "foreign file", "the file is not the record of a visit"},
	Newer:        {"newer", "file of a later version", "the file was written in a later format than this program reads"},
	Unreadable:   {"unreadable", "cannot be read", "the system does not let us read the file or folder, or it is no regular file"},
	Smaller:      {"smaller", "smaller than the need", "the system ordered, or else recorded as recommended, falls short of what the answers ask for, by today's rules and range"},
	Differs:      {"differs", "would differ today", "today's rules and range give another outcome, system, firmness, deciding requirement or thickness needed than was recorded"},
	StillOpen:    {"open", "open questions", "a question without an answer could change the system"},
	Contradicted: {"contradicted", "answers contradict", "the use claimed and the metres or cuts told do not go together"},
	Unreasoned:   {"no-reason", "overruled without a reason", "the rep overruled what decides the sale and gave no reason"},
	Unclear:      {"unclear", "answers not understood", "an answer in the file cannot be understood"},
	Unproven:     {"unproven", "requirement not shown", "the latest demonstration recorded holds no cut that proves what decides, though the plan has one"},
	Unsafe:       {"safety", "safety questions skipped", "eye protection, ventilation or hot-work limits were never asked about"},
	Overdue:      {"overdue", "next step overdue", "the day of the next step is past, and the outcome is neither an order nor a no"},
	Twice:        {"twice", "same customer twice", "another file below the folder is about a customer of the same name"},
}

// Kind says what a flag is.
func (f Flag) Kind() FlagKind { return kinds[f] }

// FlagKinds lists all flags, gravest first.
func FlagKinds() []FlagKind { return append([]FlagKind(nil), kinds[:]...) }

// list returns the flags of a set, gravest first.
func (s FlagSet) list() []Flag {
	var list []Flag
	for s &= 1<<flags - 1; s != 0; s &= s - 1 {
		list = append(list, Flag(bits.TrailingZeros32(uint32(s))))
	}
	return list
}

// String names the flags, with a comma between.
func (s FlagSet) String() string {
	var ids []string
	for _, f := range s.list() {
		ids = append(ids, kinds[f].ID)
	}
	return strings.Join(ids, ", ")
}

// Raised is a flag of a row with its reason.
type Raised struct {
	Flag   Flag
	Reason message.Message
}

// Raised lists the flags of a row, gravest first.
func (r *Row) Raised() []Raised {
	reasons := strings.Split(r.Why, "\n")
	var list []Raised
	for i, f := range r.Flags.list() {
		one := Raised{Flag: f}
		if i < len(reasons) {
			one.Reason = message.Unpack(reasons[i])
		}
		list = append(list, one)
	}
	return list
}

// reasons are the reasons of the flags, in the words asked for.
func (r *Row) reasons(words *message.Catalog) []string {
	var list []string
	for _, raised := range r.Raised() {
		list = append(list, sanitize.Line(words.Print(raised.Reason)))
	}
	return list
}

// raise raises a flag with its reason, in its place among those raised.
func (r *Row) raise(f Flag, reason message.Message) {
	if r.Flags.Has(f) {
		return
	}
	var reasons []string
	if r.Flags != 0 {
		reasons = strings.Split(r.Why, "\n")
	}
	graver := (r.Flags & (1<<f - 1)).Count()
	reasons = slices.Insert(reasons, min(graver, len(reasons)), strings.ReplaceAll(reason.Pack(), "\n", " "))
	r.Flags, r.Why = r.Flags.With(f), strings.Join(reasons, "\n")
}
