-- Tries the language server in a fresh folder, $FOLDER, and writes what went wrong to
-- $ERRORS.
local folder, wrong = vim.env.FOLDER, {}
local function check(truth, ...)
  if not truth then
    table.insert(wrong, table.concat({ ... }, ' '))
  end
end
local function await(what, test)
  check(vim.wait(20000, test, 20), 'waited in vain for', what, vim.inspect(vim.diagnostic.get(0)))
end
local function write(name, lines)
  vim.fn.writefile(lines, folder .. '/' .. name)
end
-- The errors alone: what else is said of a rig is the linter's matter.
local function errors(buffer)
  return vim.diagnostic.get(buffer, { severity = vim.diagnostic.severity.ERROR })
end
local function clients()
  local ids = {}
  for _, c in ipairs(vim.lsp.get_active_clients()) do
    table.insert(ids, c.id)
  end
  return ids
end

local function run()
  write('policy.rig', { 'policy yard' })
  write('one.rig', { 'anchor  hüt', 'load    sack', 'hauler  team', 'pulley  top   on hüt  holds sack', 'rope    long', '',
    'reeve long: sack / hat \\ team  # 🪢' })
  vim.cmd('edit ' .. vim.fn.fnameescape(folder .. '/one.rig'))
  local one = vim.api.nvim_get_current_buf()
  await('the unknown part', function() return #errors(one) == 1 end)
  local found = errors(one)[1] or {}
  check(found.lnum == 6 and found.col == 19, 'the place is', vim.inspect(found))
  check((found.message or ''):find('hat is not a part of this rig', 1, true), 'the message is', found.message)
  check(found.source == 'fairlead', 'the source is', found.source)

  -- What is typed is known at once, saved or not; saving sets the style.
  vim.api.nvim_buf_set_text(one, 6, 19, 6, 22, { 'top' })
  await('no errors', function() return #errors(one) == 0 end)
  vim.api.nvim_buf_set_lines(one, 0, 1, false, { 'anchor hüt' })
  vim.cmd('write')
  check(vim.fn.readfile(folder .. '/one.rig')[1] == 'anchor  hüt', 'the style is', vim.fn.readfile(folder .. '/one.rig')[1])

  -- Hover over the pulley.
  vim.api.nvim_win_set_cursor(0, { 4, 9 })
  local answer = vim.lsp.buf_request_sync(one, 'textDocument/hover', vim.lsp.util.make_position_params(), 20000)
  check(vim.inspect(answer):find('top', 1, true), 'the hover is', vim.inspect(answer))

  -- Notes are served by the same server; those without a rig by none.
  write('lesson.markdown', { '# Lesson', '', '- The rope:', '', '  ```rig', '  anchor  head', '  load    sack', '  rope    long',
    '  reeve long: sack / hed', '  ```' })
  vim.cmd('edit ' .. vim.fn.fnameescape(folder .. '/lesson.markdown'))
  local lesson = vim.api.nvim_get_current_buf()
  await('the unknown part in notes', function() return #errors(lesson) > 0 end)
  local at = errors(lesson)[1] or {}
  check(at.lnum == 8 and at.col == 21, 'the place in notes is', vim.inspect(at))
  check(#clients() == 1, 'there are', #clients(), 'servers')
  write('plain.markdown', { '# Plain', '```rigs', 'anchr', '```' })
  vim.cmd('edit ' .. vim.fn.fnameescape(folder .. '/plain.markdown'))
  local plain = vim.api.nvim_get_current_buf()
  check(#vim.lsp.buf_get_clients(plain) == 0, 'notes without a rig are served')
  vim.fn.setline(2, '```rig')
  vim.cmd('write')
  await('the server once there is a rig', function() return #errors(plain) > 0 end)
end

local ok, message = xpcall(run, debug.traceback)
if not ok then
  table.insert(wrong, message)
end
for _, c in ipairs(vim.lsp.get_active_clients()) do
  c.stop()
end
vim.wait(5000, function() return #vim.lsp.get_active_clients() == 0 end, 20)
check(#vim.lsp.get_active_clients() == 0, 'the server did not stop')
vim.fn.writefile(vim.split(table.concat(wrong, '\n'), '\n'), vim.env.ERRORS, 'b')
vim.cmd('qall!')
