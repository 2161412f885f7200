" A reeving line that goes on stands under its first node; all else begins at the margin.

if exists('b:did_indent')
  finish
endif
let b:did_indent = 1

setlocal indentexpr=FairleadIndent(v:lnum) nolisp nosmartindent noautoindent
let &l:indentkeys = '0/,0\,0~,0#,o,O,!^F'
let b:undo_indent = 'setlocal indentexpr< indentkeys< lisp< smartindent< autoindent<'

if exists('*FairleadIndent')
  finish
endif

" The column of the line lnum, in blanks.
function FairleadIndent(lnum) abort
  let line = getline(a:lnum)
  let above = s:above(a:lnum)
  if line =~# '^\s*#' || above == 0 || !s:goes_on(getline(above), line)
    return 0
  endif
  while above > 0
    let head = matchstr(getline(above), '^\s*reeve\s\+\S\{-}\s*:\s*')
    if head !=# ''
      return strdisplaywidth(head)
    endif
    let above = s:above(above)
  endwhile
  return 0
endfunction

" The line above that is not only a comment; 0 where a blank line cuts it off.
function s:above(lnum) abort
  let above = a:lnum - 1
  while above > 0 && getline(above) =~# '^\s*#'
    let above -= 1
  endwhile
  return getline(above) =~# '\S' ? above : 0
endfunction

function s:goes_on(before, line) abort
  let first = matchstr(a:line, '^\s*\zs\a\%(\k\|[-.]\)*')
  if index(g:fairlead#words#statements + g:fairlead#words#kinds, first) >= 0
    return 0
  endif
  let code = substitute(a:before, '\s*#.*$', '', '')
  return a:line =~# '^\s*[/\\~]' || code =~# '[/\\~]\s*$'
endfunction
