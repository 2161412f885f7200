" Reads from $TEXTS a list of {filetype, text, places}, places being [line, byte] from 1,
" and writes to $GROUPS for each text the list of the names of the syntax groups there.
set nomore
let s:all = []
try
  for s:one in json_decode(join(readfile($TEXTS), "\n"))
    enew!
    call setline(1, split(s:one.text, "\n", 1))
    let &filetype = s:one.filetype
    call add(s:all, map(s:one.places, 'synIDattr(synID(v:val[0], v:val[1], 1), "name")'))
  endfor
catch
  call writefile([v:exception, v:throwpoint], '/dev/stderr')
  cquit
endtry
call writefile([json_encode(s:all)], $GROUPS)
qall!
