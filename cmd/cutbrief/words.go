package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// englishWords names our own words, for which no file is needed.
const englishWords = "en"

func (a *app) wordsCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "words",
		Short: "Say which words are used; check or start a book of phrases of your own",
		Long: `words says in which words the interview, the page and the cautions come: ours in
English, the built-in German ones, or a book of phrases of your own, in another language
or in your firm's wording. It is chosen by --words (en, de or a CSV file), by the
environment variable CUTBRIEF_WORDS, or kept as cutbrief/words.csv in your configuration
folder. What a customer said, names and what files call things are never put into other
words, and neither are JSON and CSV, which programs read.`,
		Example: `  cutbrief words
  cutbrief words --words de`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.tellWords() },
	}
	c.AddCommand(a.wordsCheckCommand(), a.wordsTemplateCommand())
	return c
}

func (a *app) wordsTemplateCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "template [de]",
		Short: "Print a book of phrases to fill in",
		Long: `template prints every sentence of the program as a CSV file with an empty second column
for your words; {1}, {2} stand for what varies. A sentence that is left empty stays as
it is. With de the second column holds the German words.`,
		Example: `  cutbrief words template
  cutbrief words template de > our-words.csv`,
		ValidArgs: catalog.Languages(),
		Args:      takes(0, 1, "words template takes one language", "leave it out, or say de"),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 && catalog.For(args[0]) == nil {
				return misuse(fmt.Sprintf("there are no words in %q", args[0]), "leave it out, or say "+strings.Join(catalog.Languages(), " or "))
			}
			return put(a.out, []byte(catalog.Template(strings.Join(args, ""))))
		},
	}
}

func (a *app) wordsCheckCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Check a book of phrases line by line",
		Long: `check reads a book of phrases and says, line by line, what is wrong, and which sentences
of the program it has no words for. The exit status is 1 if a line is wrong; what has no
words stays as it is.`,
		Example: "  cutbrief words check our-words.csv",
		Args:    takes(1, 1, "words check needs the name of one file", "such as cutbrief words check our-words.csv"),
		RunE:    func(_ *cobra.Command, args []string) error { return a.checkWords(args[0]) },
	}
}

// book is the book of phrases in use, nil for our own words. A book with errors
// is refused: a page must not be half in other words.
func (a *app) book() (*message.Catalog, error) {
	named, from := a.wordsNamed()
	tag := strings.ToLower(named)
	switch {
	case tag == "", tag == englishWords:
		return nil, nil
	case catalog.For(tag) != nil:
		return catalog.For(tag), nil
	}
	file, err := os.Open(named)
	if from == "" && errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fail(fmt.Errorf("read words %s: %w", named, reason(err)), "say en, de or the name of a file; one to start from: cutbrief words template")
	}
	defer file.Close()
	book, findings := catalog.Read(file, filepath.Base(named))
	for _, f := range findings {
		if f.Severity == csvfile.Error {
			return nil, fail(fmt.Errorf("words %s: %s", named, f), "see every line with: cutbrief words check %s", named)
		}
	}
	return book, nil
}

// bookFor is the book for a document. JSON, CSV and calendars are for programs and
// stay in our own words.
func (a *app) bookFor(form format) (*message.Catalog, error) {
	switch form {
	case pdfFormat, textFormat, markdownFormat:
		return a.book()
	}
	return nil, nil
}

// wordsNamed is the language or file named, and by what; from is "" for the file
// in the configuration folder, which need not exist.
func (a *app) wordsNamed() (named, from string) {
	if a.words != "" {
		return a.words, "--words"
	}
	if named := a.env("CUTBRIEF_WORDS"); named != "" {
		return named, "CUTBRIEF_WORDS"
	}
	base, err := a.userDir("XDG_CONFIG_HOME", ".config")
	if err != nil {
		return "", ""
	}
	return filepath.Join(base, "cutbrief", "words.csv"), ""
}

// tellWords says which words are in use and where they come from.
func (a *app) tellWords() error {
	book, err := a.book()
	if err != nil {
		return err
	}
	named, from := a.wordsNamed()
	if from == "" {
		from = tidy(named)
	}
	text := "The words are the program's own, in English.\n"
	if book != nil {
		text = fmt.Sprintf("The words are those of the book %s: %s, chosen by %s.\n", tidy(book.Name), counted(book.Rows(), "phrase"), from)
		if n := len(catalog.Lacks(book)); n > 0 {
			text += fmt.Sprintf("%s of the program stay as they are.\n", counted(n, "sentence"))
		}
	}
	return put(a.out, []byte(text))
}

// checkWords prints every finding about a file and every sentence it has no
// words for, one a line, and fails if a line is wrong.
func (a *app) checkWords(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return fail(fmt.Errorf("read words %s: %w", path, reason(err)), "one to start from: cutbrief words template")
	}
	defer file.Close()
	book, findings := catalog.Read(file, filepath.Base(path))
	var b bytes.Buffer
	for _, f := range findings {
		fmt.Fprintln(&b, tidy(f.String()))
	}
	lacks, wrong := catalog.Lacks(book), csvfile.Count(findings, csvfile.Error)
	for _, s := range lacks {
		if book.Rows() > 0 || wrong == 0 { // of a file that is no book, the reason is enough
			fmt.Fprintln(&b, "no words for: "+s)
		}
	}
	fmt.Fprintf(&b, "%s: %s can be used, %s without words\n", tidy(path), counted(book.Rows(), "phrase"), counted(len(lacks), "sentence"))
	if err := put(a.out, b.Bytes()); err != nil {
		return err
	}
	if wrong > 0 {
		return fail(fmt.Errorf("words %s: %d to correct", path, wrong), "the lines above say where and what would be accepted")
	}
	return nil
}
