package typeface

import (
	"encoding/binary"
	"maps"
	"math/bits"
	"slices"
)

// assemble writes tables as a TrueType font file, with checksums, tables in
// alphabetical order.
func assemble(t map[string][]byte) []byte {
	names := slices.Sorted(maps.Keys(t))
	names = slices.DeleteFunc(names, func(n string) bool { return len(t[n]) == 0 })
	n := len(names)
	out := binary.BigEndian.AppendUint32(nil, 0x00010000)
	log := bits.Len(uint(n)) - 1
	for _, v := range []int{n, 16 << log, log, 16*n - 16<<log} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	at := len(out) + 16*n
	for _, name := range names {
		out = append(out, name...)
		for _, v := range []uint32{checksum(t[name]), uint32(at), uint32(len(t[name]))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		at += (len(t[name]) + 3) &^ 3
	}
	head := 0
	for _, name := range names {
		if name == "head" {
			head = len(out)
		}
		out = append(out, t[name]...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	// The whole file's checksum must come to this figure (OpenType, "head" table).
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-checksum(out))
	return out
}

func checksum(b []byte) uint32 {
	var sum uint32
	for len(b) >= 4 {
		sum += binary.BigEndian.Uint32(b)
		b = b[4:]
	}
	if len(b) > 0 {
		var last [4]byte
		copy(last[:], b)
		sum += binary.BigEndian.Uint32(last[:])
	}
	return sum
}

// longHead returns the head table for a long loca table, its checksum blank.
func longHead(head []byte) []byte {
	out := slices.Clone(head)
	binary.BigEndian.PutUint32(out[8:], 0)
	binary.BigEndian.PutUint16(out[50:], 1)
	return out
}

// shortPost returns the post table's head in its version without glyph names.
func shortPost(post []byte) []byte {
	out := slices.Clone(post[:32])
	binary.BigEndian.PutUint32(out, 0x00030000)
	return out
}

// emptyName returns a name table without entries.
func emptyName() []byte { return []byte{0, 0, 0, 0, 0, 6} }
