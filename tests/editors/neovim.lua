-- Opens a recipe with the server, as a cook would, and writes what was seen to $OUT.
local out = {}
local function wait(what, is)
  out[what] = vim.wait(20000, is, 50)
end

require('quern').setup({ cmd = { vim.env.NODE, vim.env.SERVER, '--stdio' } })
vim.cmd('filetype plugin on')
vim.cmd('edit ' .. vim.env.RECIPE)
vim.cmd('setfiletype quern')

local get_clients = vim.lsp.get_clients or vim.lsp.get_active_clients
wait('attached', function()
  local client = get_clients()[1]
  return client ~= nil and client.initialized == true
end)
wait('found', function()
  return #vim.diagnostic.get(0) > 0
end)
out.findings = {}
for _, found in ipairs(vim.diagnostic.get(0)) do
  table.insert(out.findings, { line = found.lnum, code = found.code, message = found.message })
end
vim.api.nvim_win_set_cursor(0, { 2, 3 })
local hovered = vim.lsp.buf_request_sync(0, 'textDocument/hover', vim.lsp.util.make_position_params(0, 'utf-16'), 20000)
out.hover = vim.inspect(hovered)
vim.cmd('QuernScale 2')
wait('scaled', function()
  return vim.api.nvim_buf_get_lines(0, 1, 2, false)[1]:find('1000 g') ~= nil
end)
vim.cmd('undo')
out.undone = vim.api.nvim_buf_get_lines(0, 1, 2, false)[1]
vim.api.nvim_buf_set_lines(0, 2, 3, false, { '  340 g     water' })
wait('mended', function()
  for _, found in ipairs(vim.diagnostic.get(0)) do
    if found.code == 'dough-too-wet' then
      return false
    end
  end
  return true
end)
vim.fn.writefile({ vim.json and vim.json.encode(out) or vim.fn.json_encode(out) }, vim.env.OUT)
vim.cmd('qa!')
