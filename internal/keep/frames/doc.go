// Package frames answers: what do the pictures in a folder say of how they were taken?
//
//	folder --list--> files --read, shared over the cores--> recap.Frame, or why not
//
// Nothing is ever written to a picture or beside one. Of each file only its data on how
// it was taken are read: at most [mostRead] bytes, wherever they stand. What a file is
// tells its content, not its name. A raw file and the JPEG of the same name are one frame,
// and an XMP sidecar of that name says its rating, and the rest where no picture does.
//
// The library reads JPEG, HEIF and what is built as TIFF (CR2, NEF, ARW, DNG, PEF and their
// like). Thin readers here show it what other raw files have within: ORF and RW2 are TIFF
// but for their number, CR3 has TIFF in boxes (ISO/IEC 14496-12), RAF a JPEG. Other raw
// kinds are counted, unless a sidecar or a JPEG beside them says how they were taken.
//
// What cannot be read is counted by its cause and the rest goes on: a card that is pulled
// in mid-read leaves as many "unreadable" files. A [Journal] keeps what was read, so that
// a run that was stopped goes on where it was.
//
// Limits: the time is as fine as the camera tells it; ratings above 5 and below -1 are
// none; makers' notes are not read.
package frames
