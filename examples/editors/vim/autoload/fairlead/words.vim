" The words of the notation. The tests of the project write these lists.
let s:cpo = &cpo
set cpo&vim

" generated: statements
let fairlead#words#statements = split(
      \ 'rig use include join reeve expect accept units stock policy'
      \ .' require rule')
" end
" generated: kinds
let fairlead#words#kinds = split(
      \ 'anchor focal leg edge load counterweight hauler tender pulley'
      \ .' carabiner ring device hitch clamp knot rope cord sling')
" end
" generated: clauses
let fairlead#words#clauses = split(
      \ 'strength efficiency lowering friction turns from to angle'
      \ .' strut padded mass weight slope people raise pull share'
      \ .' sheaves cord wraps slips damages locking plain holds takes'
      \ .' sideways set-back retains releasable diameter material at'
      \ .' length')
" end
" generated: naming
let fairlead#words#naming = split(
      \ 'from to holds')
" end
" generated: free
let fairlead#words#free = split(
      \ 'material')
" end
" generated: structure
let fairlead#words#structure = split(
      \ 'on at to from with without tail loop per because')
" end
" generated: claims
let fairlead#words#claims = split(
      \ 'actual advantage by class drop factor finding for hand'
      \ .' hauling held load lower not of over person pull released'
      \ .' stroke times travel under when while')
" end
" generated: classes
let fairlead#words#classes = split(
      \ 'simple compound complex')
" end
" generated: figures
let fairlead#words#figures = split(
      \ 'factor pull lower hand people times advantage drop anchor'
      \ .' angle turn cord set-back stroke resets stage gain')
" end
" generated: settings
let fairlead#words#settings = split(
      \ 'error warning advice off')
" end
" generated: units
let fairlead#words#units = split(
      \ 'kg g t lb lbf N kN daN m cm mm ft in deg %')
" end
" generated: reserved
let fairlead#words#reserved = split(
      \ 'rig use include join reeve expect accept units stock policy'
      \ .' require rule anchor focal leg edge load counterweight hauler'
      \ .' tender pulley carabiner ring device hitch clamp knot rope'
      \ .' cord sling strength efficiency lowering friction turns from'
      \ .' to angle strut padded mass weight slope people raise pull'
      \ .' share sheaves wraps slips damages locking plain holds takes'
      \ .' sideways set-back retains releasable diameter material at'
      \ .' length on with without tail loop per because')
" end

let &cpo = s:cpo
unlet s:cpo
