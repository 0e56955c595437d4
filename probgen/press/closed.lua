-- Lua as the pages need it: what starts programs, opens sockets or reaches files elsewhere is gone.
-- Read before a preamble.  Files are opened below the folders named in press_readable, or beside the
-- run; `closelua`, called when the documents begin, takes Lua itself away from them.
local roots = {}
for root in (os.getenv("press_readable") or ""):gmatch("[^;]+") do
  roots[#roots + 1] = root:gsub("/*$", "/")
end

local function allowed(name)
  name = tostring(name)
  if name:find("..", 1, true) or name:find("%z") or name:find("^[~|]") then return false end
  if not name:find("^/") and not name:find("^%a:") then return true end
  for _, root in ipairs(roots) do
    if name:sub(1, #root) == root then return true end
  end
  return false
end

-- A function whose first argument names a file.
local function within(owner, name)
  local open = owner and owner[name]
  if type(open) ~= "function" then return end
  owner[name] = function(file, ...)
    if file ~= nil and not allowed(file) then return nil, tostring(file) .. ": closed" end
    return open(file, ...)
  end
end

local function without(owner, ...)
  for _, name in ipairs(owner and { ... } or {}) do owner[name] = nil end
end

without(os, "execute", "exec", "spawn", "rename", "setenv", "tmpname", "tmpdir", "exit",
  "kpsepopen", "resultof", "launch", "sleep", "socketsleep", "socketgettime")
without(io, "popen", "tmpfile", "kpsepopen")
without(lfs, "chdir", "rmdir", "link", "symlink", "touch", "lock", "lock_dir", "unlock", "setmode",
  "setexecutable", "mkdirs", "mkdirp")
without(debug, "getupvalue", "setupvalue", "upvalueid", "upvaluejoin", "getlocal", "setlocal",
  "getregistry", "getmetatable", "setmetatable", "getuservalue", "setuservalue", "sethook", "debug")
without(package, "loadlib")
package.cpath = ""
package.searchers[3], package.searchers[4] = nil, nil
for _, name in ipairs({ "ffi", "socket", "socket.core", "mime", "mime.core", "mplib" }) do
  package.loaded[name], package.preload[name], _G[name] = nil, nil, nil
end
for _, name in ipairs({ "open", "lines", "input", "output", "loaddata", "savedata", "readall" }) do
  within(io, name)
end
for _, name in ipairs({ "dir", "attributes", "symlinkattributes", "isfile", "isdir", "readlink", "mkdir" }) do
  within(lfs, name)
end
within(os, "remove")
within(_G, "loadfile")
within(_G, "dofile")
within(gzip, "open")
within(zip, "open")
within(pdfe, "open")
within(fontloader, "open")
within(fontloader, "info")
within(package, "searchpath")

-- The primitives by which TeX calls Lua, under whatever name, and `primitive`, which would give them
-- back.
function closelua()
  local ways = { "directlua", "latelua", "luabytecode", "luabytecodecall", "luafunction",
    "luafunctioncall", "lateluafunction", "luadef", "primitive", "luaescapestring" }
  tex.enableprimitives("press@", ways)
  local gone, named = {}, {}
  for _, way in ipairs(ways) do
    local found = token.create("press@" .. way)
    if found then gone[found.cmdname .. " " .. tostring(found.mode)] = way end
  end
  for _, name in ipairs(tex.hashtokens()) do
    local found = token.create(name)
    if found and gone[found.cmdname .. " " .. tostring(found.mode)] then named[#named + 1] = name end
  end
  for _, name in ipairs(named) do
    tex.sprint("\\global\\expandafter\\let\\csname " .. name .. "\\endcsname\\closed")
  end
  -- microtype asks Lua about each font; what it has not set up by now is set without protrusion.
  tex.sprint("\\expandafter\\let\\csname MT@setupfont\\endcsname\\relax")
  closelua = nil
end
