package pdf

// say puts a text that the page words itself into the words of the brief's
// book; the brief's own texts are said already.
func (pg *page) say(text string) string {
	if pg.brief == nil {
		return text
	}
	return pg.brief.Words.Say(text)
}
