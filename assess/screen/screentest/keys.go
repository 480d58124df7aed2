package screentest

import (
	"maps"
	"slices"

	tea "github.com/charmbracelet/bubbletea"
)

// named are the keys that are no text.
var named = map[string]tea.KeyMsg{
	"<ctrl+a>": {Type: tea.KeyCtrlA}, "<ctrl+b>": {Type: tea.KeyCtrlB}, "<ctrl+d>": {Type: tea.KeyCtrlD},
	"<ctrl+e>": {Type: tea.KeyCtrlE}, "<ctrl+f>": {Type: tea.KeyCtrlF}, "<ctrl+k>": {Type: tea.KeyCtrlK},
	"<f3>": {Type: tea.KeyF3}, "<f4>": {Type: tea.KeyF4}, "<f5>": {Type: tea.KeyF5}, "<f6>": {Type: tea.KeyF6},
	"<f7>": {Type: tea.KeyF7}, "<f8>": {Type: tea.KeyF8}, "<f9>": {Type: tea.KeyF9}, "<right>": {Type: tea.KeyRight}, "<pgup>": {Type: tea.KeyPgUp},
	"<enter>": {Type: tea.KeyEnter}, "<esc>": {Type: tea.KeyEsc}, "<tab>": {Type: tea.KeyTab},
	"<shift+tab>": {Type: tea.KeyShiftTab}, "<up>": {Type: tea.KeyUp}, "<down>": {Type: tea.KeyDown},
	"<space>": {Type: tea.KeySpace, Runes: []rune{' '}}, "<home>": {Type: tea.KeyHome}, "<end>": {Type: tea.KeyEnd},
	"<pgdown>": {Type: tea.KeyPgDown}, "<backspace>": {Type: tea.KeyBackspace}, "<delete>": {Type: tea.KeyDelete},
	"<ctrl+c>": {Type: tea.KeyCtrlC}, "<ctrl+g>": {Type: tea.KeyCtrlG}, "<ctrl+j>": {Type: tea.KeyCtrlJ},
	"<ctrl+l>": {Type: tea.KeyCtrlL}, "<ctrl+n>": {Type: tea.KeyCtrlN}, "<ctrl+o>": {Type: tea.KeyCtrlO},
	"<ctrl+r>": {Type: tea.KeyCtrlR}, "<ctrl+s>": {Type: tea.KeyCtrlS}, "<ctrl+t>": {Type: tea.KeyCtrlT}, "<ctrl+u>": {Type: tea.KeyCtrlU}, "<ctrl+x>": {Type: tea.KeyCtrlX}, "<ctrl+y>": {Type: tea.KeyCtrlY},
	"<f1>": {Type: tea.KeyF1}, "<f2>": {Type: tea.KeyF2}, "<left>": {Type: tea.KeyLeft},
}

// Names are the keys that have a name, such as "<enter>", sorted.
func Names() []string { return slices.Sorted(maps.Keys(named)) }

// Key is the press of a named key, or else a text typed at once.
func Key(k string) tea.KeyMsg {
	if msg, ok := named[k]; ok {
		return msg
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}
