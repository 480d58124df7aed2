// Package pdf lays a brief out on one printed page, A4 or Letter, readable in
// black and white. It measures before it draws: where the content is too long
// it is shortened in a fixed order, and the page says what was shortened. It
// words nothing and computes no figure. Commands and screens import it.
//
// The page uses the Go fonts, cut to the common characters in the folder font;
// their licence is in FONT-LICENSE.
package pdf
