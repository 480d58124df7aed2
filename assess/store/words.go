package store

import (
	"os"
	"strings"

	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// englishWords names our own words, for which no file is needed.
const englishWords = "en"

// WordsNamed is the language or file with the words to use, and by what it was
// chosen: --words, else CUTBRIEF_WORDS, else by its path the file in the
// configuration folder if it is there, else the locale of the machine, as far as
// we have its language.
func (p Places) WordsNamed(flag string) (named, by string) {
	path, by := p.Own("words", flag)
	if by != "" {
		return path, by
	}
	if _, err := os.Stat(path); path != "" && err == nil {
		return path, path
	}
	locale, variable := p.Locale("LC_MESSAGES")
	language, _, _ := strings.Cut(strings.ToLower(locale), "_")
	language, _, _ = strings.Cut(language, ".")
	if catalog.For(language) != nil {
		return language, variable
	}
	return englishWords, ""
}

// Words is the catalog to print with, nil for our own words. One with errors is
// refused: a page must not be half in other words.
func (p Places) Words(flag string) (*message.Catalog, error) {
	named, _ := p.WordsNamed(flag)
	tag := strings.ToLower(named)
	if tag == englishWords {
		return nil, nil
	}
	if c := catalog.For(tag); c != nil {
		return c, nil
	}
	return Words.Load(named, true)
}

// WordsFinding looks at the words in use: a language, or a list.
func (p Places) WordsFinding(flag string) Finding {
	named, by := p.WordsNamed(flag)
	switch tag := strings.ToLower(named); {
	case tag == englishWords:
		return Say("words", "English")
	case catalog.For(tag) != nil:
		return Say("words", "{1}, chosen by {2}", message.Name(catalog.For(tag).Language), message.Name(by))
	}
	return Words.Finding(p, flag)
}

// Locale is the language the machine is set to, as its variable says, and that
// variable. The order is that of POSIX, Base Definitions, 8.2, from memory.
func (p Places) Locale(kind string) (value, variable string) {
	for _, name := range []string{"LC_ALL", kind, "LANG"} {
		if value := p.Getenv(name); value != "" {
			return value, name
		}
	}
	return "", ""
}

// LettersFinding says whether letters outside ASCII can be relied on.
func (p Places) LettersFinding() Finding {
	value, variable := p.Locale("LC_CTYPE")
	switch lower := strings.ToLower(value); {
	case p.System == "windows":
		return Say("letters", "Unicode")
	case value == "":
		return Say("letters", "LANG is not set: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 corrects it")
	case strings.Contains(lower, "utf-8") || strings.Contains(lower, "utf8"):
		return Say("letters", "UTF-8, by {1}", message.Name(variable))
	}
	return Say("letters", "{1} is {2}: signs such as ≤ and é may come out wrong; one that ends in .UTF-8 corrects it", message.Name(variable), message.Name(value))
}
