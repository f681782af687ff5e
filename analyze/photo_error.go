package analyze

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
)

// errorf gives an error that begins with the photo's file.
func (p *Photo) errorf(text string, args ...any) error {
	return fmt.Errorf("%s: "+text, append([]any{p.File}, args...)...)
}

// errPlain is an error of ours that is already a sentence.
type errPlain string

func (e errPlain) Error() string { return string(e) }

// sentence turns what a decoder says into what a painter can act on.
func (p *Photo) sentence(err error) error {
	var plain errPlain
	switch {
	case errors.As(err, &plain):
		return p.errorf("%w", plain)
	case endsEarly(err):
		return p.errorf("the file ends early, before the whole picture is there; copy it again from the camera")
	case strings.Contains(err.Error(), "dimension overflow"):
		return p.errorf("its header claims more pixels than any picture has; copy it again from the camera")
	case strings.Contains(strings.ToLower(err.Error()), "unsupported"):
		return p.errorf("this kind of %s cannot be read (%v); save it again as an ordinary JPEG or PNG", p.format, cause(err))
	}
	return p.errorf("the %s is damaged (%v); copy it again from the camera, or save it again in another program", p.format, cause(err))
}

// endsEarly tells a file cut short, also where a decoder says so in its own words:
// a JPEG whose data stops at a marker, a PNG whose data stops before the last row.
func endsEarly(err error) bool {
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) ||
		strings.Contains(err.Error(), "short Huffman data") || strings.Contains(err.Error(), "not enough pixel data")
}

// decoderLeads are what decoders begin their errors with.
var decoderLeads = []string{
	"invalid JPEG format: ", "unsupported JPEG feature: ", "png: ", "tiff: ", "webp: ", "vp8: ", "vp8l: ", "riff: ", "heic: ",
	"invalid format: ", "unsupported feature: ",
}

// cause is a decoder's own words without the name of its package, for brackets.
func cause(err error) string {
	text := err.Error()
	for _, lead := range decoderLeads {
		text = strings.TrimPrefix(text, lead)
	}
	return text
}

// plainCause is a file error without the operation and the path, which the
// sentence around it names already.
func plainCause(err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}
