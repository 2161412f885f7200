" Commands of the set-up: the standard style, and findings as files are saved.

if exists('g:loaded_fairlead')
  finish
endif
let g:loaded_fairlead = 1

command! FairleadFormat call fairlead#format()
if has('job')
  command! -nargs=? -complete=file FairleadWatch call fairlead#watch(<q-args>)
  command! FairleadStop call fairlead#stop()
endif
