// Package screen is what the full-screen parts of the program share: the look,
// the frame around every view, how keys are listed, and the window's size. It
// holds no state, asks nothing and saves nothing. Only the screens import it.
package screen

import _ "cutbrief/assess/screen/background" // before Bubble Tea
