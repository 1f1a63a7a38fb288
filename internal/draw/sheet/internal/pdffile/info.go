package pdffile

import (
	"encoding/xml"
	"fmt"
	"strings"
	"time"
)

// Info is what a file says of itself.
type Info struct {
	Title, Author, Subject, Keywords string
	Creator                          string    // the program that made content and file, with its version
	Lang                             string    // language tag; empty is "en"
	Date                             time.Time // zero: not said
	Tagged                           bool      // the parts of the document are told (tagged PDF, ISO 32000-1, 14.8; PDF/UA is not claimed: nothing here proves it)
	Front                            int       // so many pages before page 1 are numbered i, ii, iii
}

// Labels returns the catalogue's entry of the pages' numbers.
func (n Info) Labels() string {
	if n.Front == 0 {
		return ""
	}
	return fmt.Sprintf(" /PageLabels <</Nums [0 <</S /r>> %d <</S /D>>]>>", n.Front)
}

// Add writes the information dictionary and the XMP metadata stream.
func (n Info) Add(f *File) (info, xmp Ref) {
	var b strings.Builder
	b.WriteString("<<")
	for _, e := range n.entries() {
		if e[1] != "" {
			b.WriteString("/" + e[0] + " " + String(e[1]) + " ")
		}
	}
	if !n.Date.IsZero() {
		b.WriteString("/CreationDate " + Date(n.Date) + " /ModDate " + Date(n.Date))
	}
	b.WriteString(">>")
	return f.Add(b.String()), f.PlainStream("/Type /Metadata /Subtype /XML", []byte(n.xmp()))
}

func (n Info) entries() [6][2]string {
	return [6][2]string{{"Title", n.Title}, {"Author", n.Author}, {"Subject", n.Subject},
		{"Keywords", n.Keywords}, {"Creator", n.Creator}, {"Producer", n.Creator}}
}

// xmp returns the metadata as XMP (ISO 16684-1) in the Dublin Core, PDF and
// basic schemas.
func (n Info) xmp() string {
	var b strings.Builder
	b.WriteString("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">` + "\n")
	field(&b, "dc:format", "application/pdf", "", "")
	field(&b, "dc:title", n.Title, `<rdf:Alt><rdf:li xml:lang="x-default">`, `</rdf:li></rdf:Alt>`)
	field(&b, "dc:creator", n.Author, `<rdf:Seq><rdf:li>`, `</rdf:li></rdf:Seq>`)
	field(&b, "dc:description", n.Subject, `<rdf:Alt><rdf:li xml:lang="x-default">`, `</rdf:li></rdf:Alt>`)
	field(&b, "pdf:Keywords", n.Keywords, "", "")
	field(&b, "pdf:Producer", n.Creator, "", "")
	field(&b, "xmp:CreatorTool", n.Creator, "", "")
	if !n.Date.IsZero() {
		date := n.Date.UTC().Format(time.RFC3339)
		field(&b, "xmp:CreateDate", date, "", "")
		field(&b, "xmp:ModifyDate", date, "", "")
	}
	b.WriteString("</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>")
	return b.String()
}

func field(b *strings.Builder, name, value, before, after string) {
	if value == "" {
		return
	}
	b.WriteString("<" + name + ">" + before)
	xml.EscapeText(b, []byte(value)) // a strings.Builder does not fail
	b.WriteString(after + "</" + name + ">\n")
}
