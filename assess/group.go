package assess

import "cutbrief/rules/message"

// Groups returns the groups in order, with their titles.
func Groups() []struct {
	ID    Group
	Title message.ID
} {
	return []struct {
		ID    Group
		Title message.ID
	}{
		{GroupVisit, "The visit"},
		{GroupWork, "The work"},
		{GroupHow, "How it is cut"},
		{GroupSite, "The site"},
		{GroupToday, "Today"},
		{GroupDecision, "The decision"},
	}
}

// Title is the group's title.
func (g Group) Title() message.Message {
	for _, row := range Groups() {
		if row.ID == g {
			return row.Title.Message()
		}
	}
	return message.Text(string(g))
}

// Skip leaves a group out of the steps. Answers already given in it stay and
// count.
func (v *Visit) Skip(g Group) {
	if !v.Skips(g) {
		v.Skipped = append(v.Skipped, g)
	}
}

// Ask takes a group back in.
func (v *Visit) Ask(g Group) {
	var kept []Group
	for _, s := range v.Skipped {
		if s != g {
			kept = append(kept, s)
		}
	}
	v.Skipped = kept
}

// Skips reports whether a group is skipped.
func (v *Visit) Skips(g Group) bool {
	for _, s := range v.Skipped {
		if s == g {
			return true
		}
	}
	return false
}
