-- Plays Neovim with its own client: opens a file, edits it, formats it, and writes what
-- came as JSON. nvim --headless -u NONE -c "luafile client.lua", with PROGRAM, FILE,
-- EDITS and RESULT in the environment.
local file, result = vim.env.FILE, vim.env.RESULT
local published = {}
local usual = vim.lsp.handlers["textDocument/publishDiagnostics"]
vim.lsp.handlers["textDocument/publishDiagnostics"] = function(err, params, ctx, config)
  table.insert(published, params)
  return usual(err, params, ctx, config)
end

local function fail(why)
  vim.fn.writefile({ vim.fn.json_encode({ error = why }) }, result)
  vim.cmd("cquit")
end

local function wait(why, is)
  if not vim.wait(60000, is, 10) then
    fail("no " .. why)
  end
end

vim.cmd("edit " .. vim.fn.fnameescape(file))
local client = vim.lsp.start_client({
  name = "fairlead",
  cmd = { vim.env.PROGRAM, "serve" },
  root_dir = vim.fn.fnamemodify(file, ":h"),
})
vim.lsp.buf_attach_client(0, client)
wait("findings", function() return #published > 0 end)
local first = published[#published].diagnostics

-- Each edit is one of the buffer, as a user makes it; the client works out what to send.
local seen = #published
local changes = vim.fn.json_decode(vim.fn.readfile(vim.env.EDITS))
for _, c in ipairs(changes) do
  local from, to = c.range.start, c.range["end"]
  local function byte(p)
    local line = vim.api.nvim_buf_get_lines(0, p.line, p.line + 1, false)[1] or ""
    return vim.str_byteindex(line, p.character, true)
  end
  vim.api.nvim_buf_set_text(0, from.line, byte(from), to.line, byte(to), vim.split(c.text, "\n", { plain = true }))
end
-- This client wants no versions with findings: the last ones are there when nothing more
-- comes. It sends what was typed only after a while.
wait("findings after the edits", function() return #published > seen end)
repeat
  local count = #published
  vim.wait(1000, function() return #published > count end, 10)
until #published == count
local second = published[#published].diagnostics
local text = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), "\n") .. "\n"
local shown = #vim.diagnostic.get(0)

local line = 0
for i, l in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
  if l:match("^pulley%s+runner") then
    line = i
  end
end
vim.api.nvim_win_set_cursor(0, { line, vim.fn.getline(line):find(" on ") + 3 })
local at = vim.lsp.util.make_position_params()
local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(0, method, params, 10000)
  for _, a in pairs(answers or {}) do
    return a.result
  end
  fail("no answer to " .. method)
end
local hover = ask("textDocument/hover", at)
local definition = ask("textDocument/definition", at)
at.newName = "tractor"
local renaming = ask("textDocument/rename", at)
vim.lsp.util.apply_workspace_edit(renaming, "utf-16")
local renamed = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), "\n") .. "\n"
-- The text as it was first has no errors and can be formatted.
vim.api.nvim_buf_set_lines(0, 0, -1, false, vim.fn.readfile(file))
vim.lsp.buf.formatting_sync({}, 10000)
local formatted = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), "\n") .. "\n"

vim.fn.writefile({ vim.fn.json_encode({
  first = first, second = second, text = text, shown = shown, hover = hover, definition = definition,
  renamed = renamed, formatted = formatted,
}) }, result)
vim.lsp.stop_client(client)
wait("end of the server", function() return vim.lsp.client_is_stopped(client) end)
vim.cmd("qall!")
