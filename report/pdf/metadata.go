package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"time"
)

// language is the tag of the language the page is in, by BCP 47.
func (a about) language() string {
	if a.words == nil {
		return "en"
	}
	return a.words.Tag()
}

// xmp is what the file says of itself as XMP (ISO 16684-1).
func (a about) xmp() []byte {
	safe := func(s string) string {
		var b bytes.Buffer
		_ = xml.EscapeText(&b, []byte(s)) // into memory; it cannot fail
		return b.String()
	}
	check := ""
	if a.check != "" {
		check = "<dc:identifier>" + safe(a.check) + "</dc:identifier>"
	}
	return fmt.Appendf(nil, `<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:format>application/pdf</dc:format><dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title><dc:description><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:description>
<xmp:CreateDate>%s</xmp:CreateDate><xmp:CreatorTool>cutbrief</xmp:CreatorTool>%s
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`, safe(a.language()), safe(a.title), safe(a.subject), dated(a.date).Format(time.RFC3339), check)
}

// spoken writes into the catalogue of a file which language it is in, and where
// it says of itself what it is. The library has no call for the one and forgets
// the other; the catalogue is the last object it writes, the two before it are
// the information and the metadata, so that only where the table of objects
// starts changes.
func spoken(file []byte, language string) []byte {
	const catalogue, start, info = "/Type /Catalog\n", "startxref\n", "\n/Info "
	at, end, known := bytes.LastIndex(file, []byte(catalogue)), bytes.LastIndex(file, []byte(start)), bytes.LastIndex(file, []byte(info))
	if at < 0 || known < at || end < known {
		return file
	}
	var number, was int
	if _, err := fmt.Sscanf(string(file[known+len(info):]), "%d", &number); err != nil {
		return file
	}
	if _, err := fmt.Sscanf(string(file[end+len(start):]), "%d", &was); err != nil {
		return file
	}
	at += len(catalogue)
	entry := fmt.Sprintf("/Lang (%s)\n/Metadata %d 0 R\n", language, number-1)
	return fmt.Appendf(nil, "%s%s%s%s%d\n%%%%EOF\n", file[:at], entry, file[at:end], start, was+len(entry))
}
