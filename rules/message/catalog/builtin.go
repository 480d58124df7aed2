package catalog

import (
	"embed"
	"strings"
	"sync"
	"unicode"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// files are the built-in catalogs, one a language, named by its tag.
//
//go:embed *.csv
var files embed.FS

// builtIn reads each catalog once, when it is first asked for.
var builtIn = sync.OnceValue(func() map[string]func() *message.Catalog {
	list := map[string]func() *message.Catalog{}
	for _, tag := range Languages() {
		list[tag] = sync.OnceValue(func() *message.Catalog {
			c, _ := Read(strings.NewReader(text(tag)), tag) // a test holds it free of findings
			return c
		})
	}
	return list
})

// Languages are the tags of the built-in catalogs in the order of the alphabet,
// such as "de". English needs none.
func Languages() []string {
	var tags []string
	entries, _ := files.ReadDir(".") // never fails: it is in the program
	for _, e := range entries {
		tags = append(tags, strings.TrimSuffix(e.Name(), ".csv"))
	}
	return tags
}

// For is the built-in catalog of a language by its tag; nil, which is English,
// where there is none.
func For(tag string) *message.Catalog {
	if read, ok := builtIn()[tag]; ok {
		return read()
	}
	return nil
}

// Watched is a built-in catalog that tells lacking every message it is asked to
// print without having words for it; for tests.
func Watched(tag string, lacking func(message.ID)) *message.Catalog {
	f, _ := reading(strings.NewReader(text(tag)), tag)
	f.source.Lacking = lacking
	return message.NewCatalog(f.source)
}

func text(tag string) string {
	data, _ := files.ReadFile(tag + ".csv")
	return string(data)
}

// complete is the language whose catalog has a row for every message.
const complete = "de"

// Template is a catalog to fill in: every message of the program, and the words
// of a built-in language; tag is "" for none.
func Template(tag string) string {
	var out strings.Builder
	filled := tag != ""
	if !filled {
		tag = complete
	}
	for line := range strings.SplitSeq(strings.TrimSuffix(text(tag), "\n"), "\n") {
		cells, _, _ := tabular.Split(line)
		switch {
		case tabular.Skipped(line) && !filled:
			continue
		case !tabular.Skipped(line) && !filled && cells[0] != colEnglish:
			line = inCell(cells[0]) + ","
		}
		out.WriteString(line + "\n")
	}
	return out.String()
}

// inCell writes a text as one cell of a CSV file.
func inCell(s string) string {
	if strings.ContainsAny(s, `",`) || strings.HasPrefix(s, "#") {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}

// Lacks lists the messages of the program that a catalog has no row for, in the
// order of the template.
func Lacks(c *message.Catalog) []string {
	var list []string
	for _, id := range For(complete).IDs() {
		if !c.Has(message.ID(id)) {
			list = append(list, id)
		}
	}
	return list
}

// Unknown lists the rows of a catalog that no message of the program has: each
// with the message most like it, "" where none is.
func Unknown(c *message.Catalog) [][2]string {
	var list [][2]string
	all := For(complete)
	for _, id := range c.IDs() {
		if !strings.HasPrefix(id, "@") && !all.Has(message.ID(id)) {
			list = append(list, [2]string{id, nearest(id, all.IDs())})
		}
	}
	return list
}

// Convert is a wording file as this program reads it: a row that no message has
// becomes a comment, with the message most like it below, to be worded by hand.
// Files of earlier programs have such rows: whole sentences, where messages are now
// their parts.
func Convert(file string) string {
	var out strings.Builder
	all := For(complete)
	for line := range strings.SplitSeq(strings.TrimSuffix(file, "\n"), "\n") {
		cells, _, _ := tabular.Split(line)
		if tabular.Skipped(line) || len(cells) == 0 || cells[0] == colEnglish || strings.HasPrefix(cells[0], "@") || all.Has(message.ID(cells[0])) {
			out.WriteString(line + "\n")
			continue
		}
		out.WriteString("# not converted: " + line + "\n")
		if like := nearest(cells[0], all.IDs()); like != "" {
			out.WriteString("# most like it: " + like + "\n")
		}
	}
	return out.String()
}

// nearest is the text of a list that shares the largest part of its words with
// another: twice what both have over what each has (Dice 1945). Less than half is
// no likeness.
func nearest(text string, list []string) string {
	best, most := "", 0.5
	words := wordsOf(text)
	for _, other := range list {
		its, shared := wordsOf(other), 0
		for w := range its {
			if words[w] {
				shared++
			}
		}
		if likeness := 2 * float64(shared) / float64(len(words)+len(its)); likeness > most {
			best, most = other, likeness
		}
	}
	return best
}

func wordsOf(text string) map[string]bool {
	words := map[string]bool{}
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		words[w] = true
	}
	return words
}
