" Formats buffers with the program, and shows in the quickfix list what it finds.
"
" g:fairlead_program         the program, "fairlead" on the path unless set
" g:fairlead_format_on_save  0 to leave files as they are

let s:cpo = &cpo
set cpo&vim

function! s:program() abort
  return get(g:, 'fairlead_program', 'fairlead')
endfunction

function! s:missing() abort
  if executable(s:program())
    return 0
  endif
  echohl WarningMsg
  echomsg 'Fairlead: ' . s:program() . ' cannot be run; install it, or set g:fairlead_program'
  echohl None
  return 1
endfunction

" Sets the buffer before it is written, unless that is turned off or nothing in it is ours.
function! fairlead#format_on_save() abort
  let ours = &filetype ==# 'rig' || search('^[ \t>]*\S*\s*\(```\|\~\~\~\)\S*\s*rig\s*$', 'nw') > 0
  if ours && get(g:, 'fairlead_format_on_save', 1)
    call fairlead#format()
  endif
endfunction

" Sets the buffer in the standard style. A text with an error in it stays as it is.
function! fairlead#format() abort
  if s:missing()
    return
  endif
  let name = expand('%:t')
  let name = name ==# '' ? 'new.rig' : name
  let command = shellescape(s:program()) . ' fmt --as ' . shellescape(name) . ' -'
  let before = getline(1, '$')
  let after = systemlist(command, before + (&endofline ? [''] : []))
  if v:shell_error == 0
    call s:replace(before, after)
  endif
endfunction

" Replaces only the lines that differ, so that marks and folds elsewhere stay.
function! s:replace(before, after) abort
  let top = 0
  let least = min([len(a:before), len(a:after)])
  while top < least && a:before[top] ==# a:after[top]
    let top += 1
  endwhile
  let foot = 0
  while foot < least - top && a:before[-1 - foot] ==# a:after[-1 - foot]
    let foot += 1
  endwhile
  let old = len(a:before) - top - foot
  let new = a:after[top : len(a:after) - foot - 1]
  if old == 0 && len(new) == 0
    return
  endif
  let view = winsaveview()
  let both = min([old, len(new)])
  if both > 0
    call setline(top + 1, new[: both - 1])
  endif
  if old > both
    silent execute 'keepjumps' (top + both + 1) . ',' . (top + old) . 'delete _'
  elseif len(new) > both
    call append(top + both, new[both :])
  endif
  call winrestview(view)
endfunction

" Lints the folder, then each file as it is saved, until fairlead#stop().
function! fairlead#watch(path) abort
  if s:missing()
    return
  endif
  call fairlead#stop()
  let s:found = {}
  let path = a:path ==# '' ? getcwd() : fnamemodify(a:path, ':p')
  let s:job = job_start([s:program(), 'watch', '--format', 'jsonl', path],
        \ {'out_cb': function('s:hear'), 'err_cb': function('s:complain')})
endfunction

function! fairlead#stop() abort
  if exists('s:job')
    call job_stop(s:job)
    unlet s:job
  endif
endfunction

function! s:complain(channel, line) abort
  echomsg a:line
endfunction

" Takes what was found in one file and shows what is found in all.
function! s:hear(channel, line) abort
  let said = json_decode(a:line)
  let s:found[said.uri] = said.diagnostics
  let items = []
  for uri in sort(keys(s:found))
    let file = s:path(uri)
    let lines = empty(s:found[uri]) ? [] : s:lines(file)
    for one in s:found[uri]
      let at = one.range.start
      call add(items, {'filename': file, 'lnum': at.line + 1,
            \ 'col': s:byte(get(lines, at.line, ''), at.character) + 1,
            \ 'type': ['E', 'W', 'I'][one.severity - 1], 'text': one.message . ' [' . one.code . ']'})
    endfor
  endfor
  call setqflist([], 'r', {'title': 'fairlead watch', 'items': items})
endfunction

function! s:path(uri) abort
  let path = substitute(a:uri, '^file://', '', '')
  let path = substitute(path, '%\(\x\x\)', '\=s:raw(submatch(1))', 'g')
  return has('win32') ? substitute(path, '^/\ze\a:', '', '') : path
endfunction

" The byte of a pair of hexadecimal digits.
function! s:raw(digits) abort
  execute 'return "\x' . a:digits . '"'
endfunction

function! s:lines(file) abort
  return bufloaded(a:file) ? getbufline(a:file, 1, '$') : filereadable(a:file) ? readfile(a:file) : []
endfunction

" The byte offset of a place that is counted in UTF-16 code units.
function! s:byte(line, units) abort
  let left = a:units
  let byte = 0
  for code in str2list(a:line)
    let left -= code > 0xffff ? 2 : 1
    if left < 0
      break
    endif
    let byte += len(nr2char(code))
  endfor
  return byte
endfunction

let &cpo = s:cpo
unlet s:cpo
