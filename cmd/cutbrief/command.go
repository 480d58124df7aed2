package main

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/report/export"
	"cutbrief/report/handbook"
	"cutbrief/rules/message"
)

// command is one row of the command line. What help says of it is in the
// documents of the folder help.
type command struct {
	use    string // its name, and its arguments as help shows them
	args   arguments
	flags  []option
	tables func(*message.Catalog) []string // behind the paragraphs of its help
	run    func(c *call) error
	below  []command
	hidden bool // no part of the job, and so not listed
}

// arguments say what a command takes besides its flags: nothing, if zero.
type arguments struct {
	least, most int        // most below 0 is any number
	what        message.ID // "the file of one visit", behind "needs" and "takes"
	written     bool       // a file that is written to, and so not standard input
	values      []string   // what the first may be, and is completed with; nil is anything
	refuse      message.ID // what is said of another: "there is no completion for {1}"
	complete    func(c *cobra.Command, given []string) []string
}

// Arguments that several commands take.
var (
	oneVisit     = arguments{least: 1, most: 1, what: "the file of one visit"}
	writtenVisit = arguments{least: 1, most: 1, what: "the file of one visit", written: true}
	oneFile      = arguments{least: 1, most: 1, what: "the name of one file"}
)

// check accepts as many arguments as the command takes, and says what is needed
// otherwise.
func (r *command) check(c *cobra.Command, given []string) error {
	name, what := message.Name(pathOf(c)), r.args
	hint := func() message.Message { // reading the help takes a while
		if what.values != nil {
			return oneOf(what.values)
		}
		return suchAs(handbook.HelpTexts(nil)[pathOf(c)])
	}
	switch n := len(given); {
	case n > 0 && what.most == 0:
		path := message.Name(c.CommandPath())
		return misuse(message.New(seeHelp, path), "{1} takes no argument, got {2}", path, quoted(given[0]))
	case n < what.least:
		return misuse(hint(), "{1} needs {2}", name, what.what)
	case what.most > 0 && n > what.most:
		return misuse(hint(), "{1} takes {2}", name, what.what)
	case n > 0 && what.written && given[0] == "-":
		return misuse(message.ID("name the file of the visit").Message(), "{1} needs a file to keep the record in", name)
	case n > 0 && what.values != nil && !slices.Contains(what.values, given[0]):
		return misuse(hint(), what.refuse, quoted(given[0]))
	}
	return nil
}

// suchAs is the hint that shows the first example of a command.
func suchAs(text handbook.HelpText) message.Message {
	line, _, _ := strings.Cut(strings.TrimSpace(text.Example), "\n")
	line, _, _ = strings.Cut(line, "  ") // what stands behind it is a remark
	return message.New("such as {1}", message.Name(line))
}

// pathOf is the name of a command with those it stands below, but for the
// program's.
func pathOf(c *cobra.Command) string { return strings.TrimPrefix(c.CommandPath(), "cutbrief ") }

func quoted(s string) message.Name { return message.Name(strconv.Quote(s)) }

// option is one flag of a command.
type option struct {
	name     string
	short    string            // its letter, "" for none
	value    any               // at first; its type is the flag's
	usage    message.ID        // {1} is what values lists; a name in backquotes is shown for the value
	values   []string          // what it may be, and is completed with; nil is anything
	refuse   message.ID        // what is said of another: "{1} is not a paper size of this program"
	accepts  func(string) bool // what it may be besides
	complete func() []string   // what it is completed with besides, when somebody asks
}

// Flags that several commands have.
var (
	outFlag     = option{name: "out", value: "-", usage: "`path` of the file to write to; - is standard output"}
	forceFlag   = option{name: "force", value: false, usage: "write over a file that exists"}
	paperFlag   = option{name: "paper", value: "a4", usage: "paper size of the page: {1}", values: []string{"a4", "letter"}, refuse: "{1} is not a paper size of this program"}
	versionFlag = option{name: "version", short: "v", value: false, usage: "version of the program"}
	unitsFlag   = option{name: "units", value: "", usage: "{1} (default: the visit's own)", values: []string{"mm", "in"}, refuse: "{1} is neither mm nor in", accepts: isStyle}

	// Those of every command.
	globalFlags = []option{
		{name: "systems", value: "", usage: "CSV `file` with the systems you can offer, in place of the built-in invented range"},
		{name: "prices", value: "", usage: "CSV `file` with the prices to use, in place of the built-in invented list"},
		{name: "words", value: "", usage: "language of all texts: en, de, es, or a CSV `file` with your own wording"},
	}
)

// formatFlag is --format for some formats; the first is meant where none is named.
func formatFlag(list ...export.Format) option {
	return option{name: "format", value: string(list[0]), usage: "{1}", values: export.FormatNames(list), refuse: "{1} is not a format of this command"}
}

// with is the flag with another value at first, and another usage.
func (f option) with(value any, usage message.ID) option {
	f.value, f.usage = value, usage
	return f
}

// add declares the flag. Completion of it fails only for one that does not exist.
func (f option) add(c *cobra.Command, set *pflag.FlagSet) {
	switch v := f.value.(type) {
	case bool:
		set.BoolP(f.name, f.short, v, "")
	case string:
		set.String(f.name, v, "")
	case int:
		set.Int(f.name, v, "")
	case uint64:
		set.Uint64(f.name, v, "")
	case []string:
		set.StringSlice(f.name, v, "")
	}
	set.Lookup(f.name).Usage = string(f.usage)
	if f.values != nil || f.complete != nil {
		_ = c.RegisterFlagCompletionFunc(f.name, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			if f.complete != nil {
				return f.complete(), cobra.ShellCompDirectiveNoFileComp
			}
			return f.values, cobra.ShellCompDirectiveNoFileComp
		})
	}
}

// check refuses a value that is not one of those there are.
func (f option) check(set *pflag.FlagSet) error {
	given := []string{set.Lookup(f.name).Value.String()}
	if list, err := set.GetStringSlice(f.name); err == nil {
		given = list
	}
	for _, v := range given {
		known := v == "" || slices.Contains(f.values, normal(v)) || f.accepts != nil && f.accepts(v)
		if f.values != nil && !known {
			return misuse(oneOf(f.values), f.refuse, quoted(v))
		}
	}
	return nil
}

// normal is how a value of a list is compared.
func normal(value string) string { return strings.ToLower(strings.TrimSpace(value)) }

// call is a command as it was typed.
type call struct {
	*app
	args  []string
	flags *pflag.FlagSet
	row   *cobra.Command
}

// text is the value of a flag.
func (c *call) text(name string) string { return c.flags.Lookup(name).Value.String() }

// choice is the value of a flag that has a list of them.
func (c *call) choice(name string) string { return normal(c.text(name)) }

// on reports whether a flag that is on or off is on.
func (c *call) on(name string) bool { return c.text(name) == "true" }

// list is the value of a flag that may be given more than once.
func (c *call) list(name string) []string {
	list, _ := c.flags.GetStringSlice(name) // it is one
	return list
}

// form is --format.
func (c *call) form() export.Format { return export.Format(c.choice("format")) }

// arg is an argument, "" if there are not so many.
func (c *call) arg(i int) string {
	if i < len(c.args) {
		return c.args[i]
	}
	return ""
}

// tree is the command line as the library for it runs it.
func (a *app) tree() *cobra.Command {
	a.rows = map[*cobra.Command]*command{}
	row := rootCommand()
	root, help := a.cobra(&row), helpCommand()
	root.SetHelpCommand(a.cobra(&help))
	root.Args = a.noSuchCommand
	root.SuggestionsMinimumDistance = 2
	root.CompletionOptions = cobra.CompletionOptions{DisableDefaultCmd: true}
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetFlagErrorFunc(flagProblem)
	for _, f := range globalFlags {
		f.add(root, root.PersistentFlags())
	}
	a.setHelp(root)
	return root
}

// cobra makes one command and those below it. What is said of them is put into
// words when somebody asks for it.
func (a *app) cobra(r *command) *cobra.Command {
	c := &cobra.Command{Use: r.use, Hidden: r.hidden, Args: r.check, SilenceErrors: true, SilenceUsage: true}
	a.rows[c] = r
	if r.run != nil {
		c.RunE = func(c *cobra.Command, args []string) error { return a.runRow(r, c, args) }
	}
	for _, f := range r.flags {
		f.add(c, c.Flags())
	}
	switch {
	case r.args.complete != nil:
		c.ValidArgsFunction = func(c *cobra.Command, given []string, _ string) ([]string, cobra.ShellCompDirective) {
			if list := r.args.complete(c, given); list != nil {
				return list, cobra.ShellCompDirectiveNoFileComp
			}
			return nil, cobra.ShellCompDirectiveDefault
		}
	case r.args.values != nil:
		c.ValidArgs = r.args.values
	}
	for i := range r.below {
		c.AddCommand(a.cobra(&r.below[i]))
	}
	return c
}

func (a *app) runRow(r *command, c *cobra.Command, args []string) error {
	a.running = true
	for _, f := range r.flags {
		if err := f.check(c.Flags()); err != nil {
			return err
		}
	}
	return r.run(&call{a, args, c.Flags(), c})
}

// noSuchCommand refuses words after the bare program name, and guesses what was
// meant.
func (a *app) noSuchCommand(c *cobra.Command, args []string) error {
	if asked, _ := c.Flags().GetBool(versionFlag.name); asked || len(args) == 0 {
		return nil
	}
	hint := message.New("see {1} --help for the commands", message.Name("cutbrief"))
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		var list []message.Message
		for _, name := range near {
			list = append(list, message.Text("cutbrief "+name))
		}
		hint = message.New("did you mean {1}?", message.Or(list...))
	} else if strings.HasSuffix(args[0], ".json") {
		hint = message.New("to go on with a saved visit: cutbrief interview {1}", message.Name(args[0]))
	}
	return misuse(hint, "{1} is not a command", quoted(args[0]))
}

// flagProblem words an error of a flag. What causes a wrong value speaks of our
// insides.
func flagProblem(c *cobra.Command, err error) error {
	said := message.Text(err.Error())
	if unknown, is := errors.AsType[*pflag.NotExistError](err); is {
		said = message.New("unknown flag: {1}", message.Name("--"+unknown.GetSpecifiedName()))
		if letters := unknown.GetSpecifiedShortnames(); letters != "" {
			said = message.New("unknown flag: {1}", message.Name("-"+letters))
		}
	} else if wrong, is := errors.AsType[*pflag.InvalidValueError](err); is {
		said = message.New("invalid argument {1} for {2}", quoted(wrong.GetValue()), message.Name("--"+wrong.GetFlag().Name))
	} else if bare, is := errors.AsType[*pflag.ValueRequiredError](err); is {
		said = message.New("{1} needs a value", message.Name("--"+bare.GetFlag().Name))
	}
	return misuse(message.New(seeHelp, message.Name(c.CommandPath())), "{1}", said)
}
