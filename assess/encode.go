package assess

import (
	"bytes"
	"encoding/json"
	"slices"
	"sort"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
)

// Encode writes the visit, indented by two spaces, in stable order: the same
// visit gives the same bytes. Fields this program did not know when it read
// the visit come after those it knows. It fails with ErrTooLarge or
// ErrTooMany rather than write what Decode would refuse.
func (v *Visit) Encode() ([]byte, error) {
	compact, err := visitObject().append(nil, v)
	if err != nil {
		return nil, message.Errorf("write visit: {1}", err)
	}
	var out bytes.Buffer
	if err := json.Indent(&out, compact, "", "  "); err != nil {
		return nil, message.Errorf("write visit: {1}", err)
	}
	out.WriteByte('\n')
	if out.Len() > MaxSize {
		return nil, message.Errorf("write visit: {1} bytes: {2}", whole(out.Len()), ErrTooLarge)
	}
	return out.Bytes(), nil
}

// inOrder returns the answers by question, then by metal: chosen metals first,
// as chosen. Questions this program does not know come last, as they came.
func (v *Visit) inOrder() []Answer {
	metals := v.Metals()
	for _, m := range metal.List() {
		if !slices.Contains(metals, m.ID) {
			metals = append(metals, m.ID)
		}
	}
	sorted := slices.Clone(v.Answers)
	sort.SliceStable(sorted, func(i, j int) bool {
		a, b := &sorted[i], &sorted[j]
		if placeOf(a.Question) != placeOf(b.Question) {
			return placeOf(a.Question) < placeOf(b.Question)
		}
		return placeOf(a.Question) < len(catalogue) && slices.Index(metals, a.Metal) < slices.Index(metals, b.Metal)
	})
	return sorted
}

func placeOf(f rules.Fact) int {
	if i, ok := places()[f]; ok {
		return i
	}
	return len(catalogue)
}
