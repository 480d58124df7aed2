package words

import (
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules/message"
)

// Choices are the options named in a line, by number, identifier or text. What
// names none stays as it is, to be complained of.
func Choices(options []assess.Option, line string) []string {
	if o, ok := Choice(options, line); ok {
		return []string{o}
	}
	var chosen []string
	for _, part := range strings.Split(line, ",") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		if o, ok := Choice(options, part); ok {
			part = o
		}
		chosen = append(chosen, part)
	}
	return chosen
}

// In are options in the words of a book.
func In(book *message.Catalog, options []assess.Option) []assess.Option {
	said := make([]assess.Option, len(options))
	for i, o := range options {
		said[i] = assess.Option{ID: o.ID, Text: message.ID(book.Print(o.Text.Message()))}
	}
	return said
}

// Choice is the option named by number, identifier or text.
func Choice(options []assess.Option, named string) (string, bool) {
	if n, err := strconv.Atoi(named); err == nil && n >= 1 && n <= len(options) {
		return options[n-1].ID, true
	}
	for _, o := range options {
		if strings.EqualFold(o.ID, named) || strings.EqualFold(string(o.Text), named) {
			return o.ID, true
		}
	}
	return "", false
}
