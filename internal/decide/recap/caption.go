package recap

import (
	"bytes"
	"encoding/xml"
	"strings"
)

// Sidecar is an XMP file that says of a frame what the game says.
type Sidecar struct {
	Path string // beside the frame: its name with .xmp
	Data []byte
}

// Sidecars writes a caption for each frame of which a stage is known: event, place, stage,
// hole and credit, in the fields of IPTC Core and Extension 1.5. One of a frame whose hole
// is not sure says no hole.
func (e Evening) Sidecars(frames []Matched) []Sidecar {
	var out []Sidecar
	for _, m := range frames {
		if m.Stage == "" {
			continue
		}
		path := strings.TrimSuffix(m.File, end(m.File)) + ".xmp"
		out = append(out, Sidecar{path, e.caption(m)})
	}
	return out
}

func (e Evening) caption(m Matched) []byte {
	words := e.Title + ", " + strings.ReplaceAll(m.Stage, "-", " ")
	if e.Place != "" {
		words += ", " + e.Place
	}
	var b bytes.Buffer
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n" +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/"` +
		` xmlns:Iptc4xmpCore="http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/" xmlns:Iptc4xmpExt="http://iptc.org/std/Iptc4xmpExt/2008-02-29/">` + "\n")
	alt := func(name, text string) { list(&b, name, "Alt", ` xml:lang="x-default"`, text) }
	alt("Iptc4xmpExt:Event", e.Title)
	alt("dc:description", words)
	field(&b, "photoshop:Headline", e.Title)
	created := m.At.Format("2006-01-02T15:04:05")
	if e.Universal {
		created += "Z"
	}
	field(&b, "photoshop:DateCreated", created)
	field(&b, "Iptc4xmpCore:Location", e.Place)
	if m.Sure == Certain || m.Sure == Likely {
		field(&b, "photoshop:Instructions", "photo hole "+m.Hole)
		field(&b, "photoshop:Credit", m.Credit)
		if m.Credit != "" {
			list(&b, "dc:creator", "Seq", "", m.Credit)
		}
	}
	b.WriteString("</rdf:Description>\n</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>\n")
	return b.Bytes()
}

// field writes one text, nothing of an empty one.
func field(b *bytes.Buffer, name, text string) {
	if text == "" {
		return
	}
	b.WriteString("<" + name + ">")
	_ = xml.EscapeText(b, []byte(text)) // a buffer takes everything
	b.WriteString("</" + name + ">\n")
}

// list writes a list of one text.
func list(b *bytes.Buffer, name, kind, attr, text string) {
	b.WriteString("<" + name + "><rdf:" + kind + "><rdf:li" + attr + ">")
	_ = xml.EscapeText(b, []byte(text)) // a buffer takes everything
	b.WriteString("</rdf:li></rdf:" + kind + "></" + name + ">\n")
}
