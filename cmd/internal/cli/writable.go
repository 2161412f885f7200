package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"fairlead/lang/source"
)

// replace writes a file anew, unless it does not have any more the text that was read;
// the error names it.
func replace(file *source.File, text string) error {
	err := unchanged(file)
	if err == nil {
		err = replaceFile(file.Name, text)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", file.Name, reason(err))
	}
	return nil
}

// unchanged gives an error unless a file may be written and has the text that was read.
func unchanged(file *source.File) error {
	if _, err := writable(file.Name); err != nil { // a pipe would not be read to its end
		return err
	}
	now, err := os.ReadFile(file.Name)
	if err == nil && string(now) != file.Whole {
		err = errors.New("it was changed meanwhile and is left as it is")
	}
	return err
}

// writable says whether a file may be written: putting another in its place asks
// only the folder, and would change a file that is protected.
func writable(path string) (fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("not a regular file")
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	return info, f.Close()
}

// reason gives the cause of a file error without the path, which our messages
// begin with.
func reason(err error) error {
	var at *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &at):
		return at.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
