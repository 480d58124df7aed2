package screen

import (
	"context"
	"io"
	"os"
	"os/signal"
	"slices"
	"syscall"

	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// Dialog is what a window shows, and what its keys do. Its methods run one at a
// time, in Bubble Tea's loop, and do no I/O: what takes time is a command.
type Dialog interface {
	// Title is the header line: its left and its right end.
	Title() (left, right string)
	// Body is the text in lines of at most width cells; of more than height
	// lines only the first are shown.
	Body(width, height int) []string
	// Panel is what stands beside the body, nil where the body takes its place.
	Panel(width int) []string
	// Commands are what can be done now, what matters most first. One of the
	// first five leaves.
	Commands() []Command
	// Typing is the text that is being typed, where one is: then letters are
	// text, and no keys of commands.
	Typing() (text string, typing bool)
	// Type takes a key that is no command's, or a text that was pasted.
	Type(msg tea.KeyMsg) tea.Cmd
	// Help says more about what is shown. It stands above the keys.
	Help(width int) []string
	// Receive takes every other message, the window's size among them.
	Receive(msg tea.Msg) tea.Cmd
	// Leave ends the dialog from outside, as a signal asks for. It may save first.
	Leave() tea.Cmd
}

// Basic is a dialog without panel, help, typing and messages, to be embedded.
type Basic struct{}

// Panel is none.
func (Basic) Panel(int) []string { return nil }

// Typing is never.
func (Basic) Typing() (string, bool) { return "", false }

// Type ignores the key.
func (Basic) Type(tea.KeyMsg) tea.Cmd { return nil }

// Help is none.
func (Basic) Help(int) []string { return nil }

// Receive ignores the message.
func (Basic) Receive(tea.Msg) tea.Cmd { return nil }

// Leave leaves at once.
func (Basic) Leave() tea.Cmd { return tea.Quit }

// Window is the frame around a dialog, its look and its language. It is a model
// of Bubble Tea: it hands each key to the command it belongs to, and shows all
// keys on request.
type Window struct {
	Look    Look
	Size    Size
	Words   *message.Catalog // what is shown, in other words; nil for our own
	Keys    Keys
	Told    message.Message // what just happened; the next key takes it away
	Helping bool            // all keys are shown

	dialog Dialog
	help   Text
}

// NewWindow is a window of the usual size around a dialog.
func NewWindow(d Dialog, words *message.Catalog) *Window {
	w := &Window{Look: NewLook(), Size: Usual(), Words: words, Keys: NewKeys(), dialog: d}
	w.help.window = w
	return w
}

// leaveMsg asks the dialog to leave, from outside.
type leaveMsg struct{}

// Run shows the window until its dialog leaves. At the first signal to end, or
// when ctx is done, the dialog is asked to. The error is the terminal's.
func (w *Window) Run(ctx context.Context, in io.Reader, out io.Writer) error {
	p := tea.NewProgram(w, tea.WithInput(in), tea.WithOutput(out), tea.WithAltScreen(),
		tea.WithMouseCellMotion(), tea.WithFPS(120), tea.WithoutSignalHandler())
	ctx, cancel := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer cancel()
	defer context.AfterFunc(ctx, func() { p.Send(leaveMsg{}) })()
	_, err := p.Run()
	return err
}

// Print puts a message into the window's language.
func (w *Window) Print(m message.Message) string { return w.Words.Print(m) }

// Say is Print of a new message.
func (w *Window) Say(id message.ID, args ...any) string { return w.Print(message.New(id, args...)) }

// Init starts what the dialog has to start. The first frame is drawn at once.
func (w *Window) Init() tea.Cmd {
	if d, starts := w.dialog.(interface{ Init() tea.Cmd }); starts {
		return d.Init()
	}
	return nil
}

// Update takes one message.
func (w *Window) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		if msg.Width < 1 || msg.Height < 1 {
			return w, nil
		}
		w.Size = Size{msg.Width, msg.Height}
		return w, w.dialog.Receive(msg)
	case leaveMsg:
		return w, w.dialog.Leave()
	case tea.MouseMsg:
		return w, w.wheel(msg)
	case tea.KeyMsg:
		return w, w.keys(msg)
	}
	return w, w.dialog.Receive(msg)
}

// wheel makes arrow keys of the mouse wheel: one in a list, three in a text.
func (w *Window) wheel(msg tea.MouseMsg) tea.Cmd {
	arrow := tea.KeyMsg{Type: tea.KeyDown}
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		arrow.Type = tea.KeyUp
	case tea.MouseButtonWheelDown:
	default:
		return nil
	}
	lines := 1
	scrolls := func(c Command) bool { return c.Help().Desc == w.Keys.Scroll.Help().Desc }
	if w.Helping || slices.ContainsFunc(w.dialog.Commands(), scrolls) {
		lines = 3
	}
	var cmds []tea.Cmd
	for range lines {
		cmds = append(cmds, w.Press(arrow))
	}
	return tea.Batch(cmds...)
}

// keys hands on letters that came together: as a text where one is typed or where
// they are numbers, else one by one, as keys that were pressed fast.
func (w *Window) keys(msg tea.KeyMsg) tea.Cmd {
	if msg.Type != tea.KeyRunes || len(msg.Runes) < 2 || msg.Paste {
		return w.Press(msg)
	}
	if _, typing := w.dialog.Typing(); typing && !w.Helping || areNumbers(msg.Runes) {
		return w.Press(AsText(msg))
	}
	var cmds []tea.Cmd
	for _, r := range msg.Runes {
		cmds = append(cmds, w.Press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}))
	}
	return tea.Batch(cmds...)
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// areNumbers reports numbers typed together, such as "1, 3".
func areNumbers(typed []rune) bool {
	return !slices.ContainsFunc(typed, func(r rune) bool { return !isDigit(r) && r != ',' && r != ' ' })
}

// AsText marks letters that came together as text, so that words such as "up",
// "end" or "enter" are not taken for the keys of that name.
func AsText(msg tea.KeyMsg) tea.KeyMsg {
	msg.Paste = msg.Type == tea.KeyRunes && len(msg.Runes) > 1
	return msg
}

// Press takes one key: it does what the key's command does, or hands it on.
func (w *Window) Press(msg tea.KeyMsg) tea.Cmd {
	if msg.Alt && msg.Type == tea.KeyRunes {
		return nil // a letter with Alt held down is no text, and nobody's key
	}
	w.Told = message.Message{}
	text, typing := w.dialog.Typing()
	switch {
	case w.Helping:
		return w.pressHelp(msg)
	case pressed(msg, w.Keys.Help, typing && text != ""):
		w.openHelp()
		return nil
	}
	for _, c := range w.dialog.Commands() {
		if c.Do != nil && pressed(msg, c.Binding, typing) {
			return c.Do()
		}
	}
	return w.dialog.Type(msg)
}

// openHelp shows what the dialog says about itself, and all its keys.
func (w *Window) openHelp() {
	w.Helping = true
	w.help.Show(func(width int) []string {
		lines := w.dialog.Help(width)
		if len(lines) > 0 {
			lines = append(lines, "")
		}
		return append(lines, w.allKeys(width)...)
	})
}

// pressHelp takes a key while all keys are shown: those of the commands work,
// letters too, whatever stands beneath.
func (w *Window) pressHelp(msg tea.KeyMsg) tea.Cmd {
	k := w.Keys
	if pressed(msg, k.Help, false) || pressed(msg, k.Back, false) || pressed(msg, k.Accept, false) {
		w.Helping = false
		return nil
	}
	for _, c := range w.dialog.Commands() {
		if c.Do != nil && pressed(msg, c.Binding, false) {
			w.Helping = false
			return c.Do()
		}
	}
	w.help.Key(msg)
	return nil
}

// View draws the window. It is a function of the dialog and the size alone.
func (w *Window) View() string {
	f := Frame{Size: w.Size, Look: w.Look, Foot: w.foot(), Wide: true}
	f.Left, f.Right = w.dialog.Title()
	width, height := w.Size.Width-2, w.Room()
	if w.Helping {
		f.Body = w.help.Lines("")
		return f.Render()
	}
	if side := w.Size.Side(); side > 0 {
		if f.Side = w.dialog.Panel(side); f.Side != nil {
			f.Wide, width = false, w.Size.Main()
		}
	}
	f.Body = w.dialog.Body(max(1, width), height)
	return f.Render()
}

// Room is how many lines the body has.
func (w *Window) Room() int { return w.Size.Room(len(w.foot())) }
