package report

import (
	"strings"

	"cutbrief/rules"
)

// useWords end the sentence about the need.
var useWords = map[rules.Use]string{
	rules.Maintenance: "for repair work at irregular times",
	rules.Mixed:       "for repair work and light production",
	rules.Production:  "for production",
}

// need says in one sentence what the customer cuts and for what.
func (b *builder) need() string {
	if len(b.job.Pieces) == 0 {
		return "What you cut is not known yet."
	}
	var pieces []string
	for i := range b.job.Pieces {
		pieces = append(pieces, b.piece(&b.job.Pieces[i]))
	}
	text := "You cut " + strings.Join(pieces, "; ")
	if use, ok := b.job.Use.Get(); ok {
		return text + ", " + useWords[use] + "."
	}
	return text + ". What it is for, repair or production, is not known yet."
}

// piece words one metal: "mild steel, 10 mm most days and 12 mm at most".
func (b *builder) piece(p *rules.Piece) string {
	text := metalName(p.Metal)
	everyday, told1 := p.Everyday.Get()
	thickest, told2 := p.Thickest.Get()
	switch {
	case told1 && told2 && everyday == thickest:
		text += ", " + b.told(millimetres(thickest)) + " most days and at most"
	case told1 && told2 && everyday > thickest:
		text += ", " + b.told(millimetres(everyday)) + " most days (though " + b.told(millimetres(thickest)) + " was told as the most)"
	case told1 && told2:
		text += ", " + b.told(millimetres(everyday)) + " most days and " + b.told(millimetres(thickest)) + " at most"
	case told2:
		text += ", " + b.told(millimetres(thickest)) + " at most"
	case told1:
		text += ", " + b.told(millimetres(everyday)) + " most days (how thick at most is not known)"
	default:
		text += " (how thick is not known)"
	}
	if rare, ok := p.Rarest.Get(); ok && rare > 0 {
		text += ", and now and then " + b.told(millimetres(rare)) + " just to come apart"
	}
	return text
}
