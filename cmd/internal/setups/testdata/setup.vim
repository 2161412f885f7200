" Tries the set-up in a fresh folder, $FOLDER, and writes what went wrong to $ERRORS.
set nomore
execute 'cd' fnameescape($FOLDER)

let s:crooked = ['# Ünten 🪢', 'anchor   head', 'load  sack', 'hauler team', 'rope long',
      \ 'pulley top on head holds sack', 'reeve long: sack / top \ team', '', '']
let s:straight = ['# Ünten 🪢', 'anchor  head', 'load    sack', 'hauler  team', 'rope    long',
      \ 'pulley  top   on head  holds sack', 'reeve long: sack / top \ team']

function! s:filetype() abort
  edit new.rig
  call assert_equal('rig', &filetype)
  call assert_equal('rig', b:current_syntax)
  call assert_equal('# %s', &commentstring)
  call assert_equal('fairlead', b:current_compiler)
  setlocal filetype=
  call assert_equal('', &commentstring[:0] ==# '#' ? 'still ours' : '')
  bwipe!
endfunction

function! s:indents() abort
  edit! indents.rig
  let want = ['anchor head', '# head', 'reeve long: litter / grab', '            / top \ runner /', '# and',
        \ '            team', 'reeve t: a /', 'anchor b', '', '/ c', 'reeve  second :  x', '                 / y  # \', 'rope m']
  call setline(1, map(copy(want), 'substitute(v:val, "^\\s*", (v:key % 3 == 0 ? "   " : ""), "")'))
  normal! gg=G
  call assert_equal(want, getline(1, '$'))
  " As typed: the stroke at the start of a line pulls it under the first node.
  %delete _
  execute "normal! ireeve long: litter\<CR>/ top\<CR>\\ runner /\<CR>team\<CR>"
  call assert_equal(['reeve long: litter', '            / top', '            \ runner /', '            team', ''], getline(1, '$'))
  bwipe!
endfunction

function! s:saves() abort
  call writefile(s:crooked, 'crooked rig.rig')
  edit crooked\ rig.rig
  call setline(3, 'load   sack ')
  call cursor(6, 9)
  write
  call assert_equal(s:straight, readfile('crooked rig.rig'))
  call assert_equal(s:straight, getline(1, '$'))
  call assert_equal([6, 9], getpos('.')[1:2])

  call setline(2, 'anchr  head')
  write
  call assert_equal('anchr  head', readfile('crooked rig.rig')[1])

  let g:fairlead_format_on_save = 0
  call setline(2, 'anchor head')
  write
  call assert_equal('anchor head', readfile('crooked rig.rig')[1])
  FairleadFormat
  call assert_equal('anchor  head', getline(2))
  unlet g:fairlead_format_on_save
  bwipe!
endfunction

function! s:notes() abort
  let rest = ['*   Text   as it is  ', '', '- ```rig', '  anchor   head', '  ```', '']
  call writefile(rest, 'notes.markdown')
  edit notes.markdown
  call setline(1, '*   Text   as written  ')
  write
  let rest[0] = '*   Text   as written  '
  let rest[3] = '  anchor  head'
  call assert_equal(rest, readfile('notes.markdown'))
  bwipe!
  call writefile(['anchor   head', '```rigs', 'anchor   head', '```'], 'plain.markdown')
  edit plain.markdown
  call setline(1, 'anchor   head x')
  write
  call assert_equal('anchor   head', readfile('plain.markdown')[2])
  bwipe!
endfunction

" The errors in the quickfix list: what else is said of a rig is the linter's matter.
function! s:errors() abort
  return filter(getqflist(), 'v:val.type ==# "E"')
endfunction

function! s:makes() abort
  call writefile(['anchor  hüt', 'load    ö  mass 3 kg', 'hauler  team', 'rope    long', '', 'reeve long: ö / hat', '', 'rule unused-part warning'], 'made of two.rig')
  edit made\ of\ two.rig
  silent make!
  let list = s:errors()
  call assert_equal(1, len(list), string(list))
  call assert_equal([6, 'E'], [list[0].lnum, list[0].type])
  call assert_match('^hat is not a part of this rig.* \[unknown-part\]$', list[0].text)
  execute 'cc' index(map(getqflist(), 'v:val.type'), 'E') + 1
  call assert_equal([6, 18], getpos('.')[1:2], 'the place in a line that is not ASCII')
  call setline(6, 'reeve long: ö / hüt')
  write
  silent make!
  call assert_equal([], s:errors())
  call assert_true(index(map(getqflist(), 'v:val.type'), 'W') >= 0, string(getqflist()))
  call assert_equal([], filter(getqflist(), '!v:val.valid'))
  bwipe!
endfunction

function! s:await(test) abort
  let left = 200
  while left > 0 && !eval(a:test)
    sleep 50m
    let left -= 1
  endwhile
  call assert_true(left > 0, 'waited for ' . a:test . ', have ' . string(getqflist()))
endfunction

function! s:watches() abort
  if !has('job')
    return
  endif
  call mkdir('wätched rigs')
  let lines = ['anchor  hüt', 'load    sack', 'hauler  team', 'rope    long', '', 'reeve long: sack / hat  # 🪢']
  call writefile(lines, 'wätched rigs/one.rig')
  call setqflist([])
  FairleadWatch wätched rigs
  call s:await('len(s:errors()) == 1')
  let one = s:errors()[0]
  call assert_equal([6, 20, 'E'], [one.lnum, one.col, one.type])
  call assert_equal('one.rig', fnamemodify(bufname(one.bufnr), ':t'))
  let lines[5] = 'reeve long: sack / hüt'
  call writefile(lines, 'wätched rigs/one.rig')
  call s:await('len(s:errors()) == 0 && len(getqflist()) > 0')
  FairleadStop
endfunction

try
  for s:name in split('filetype indents saves notes makes watches')
    call call('s:' . s:name, [])
  endfor
catch
  call add(v:errors, s:name . ': ' . v:exception . ' at ' . v:throwpoint)
endtry
call writefile(v:errors, $ERRORS)
qall!
