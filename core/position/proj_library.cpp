#include "core/position/proj_library.h"

#include <cstdio>
#include <cstdlib>

#include <dlfcn.h>

namespace cupule::proj {

namespace {

[[noreturn]] void endAsTheLoaderWould()
{
    const char* message = dlerror();
    std::fprintf(stderr, "cupule: error while loading shared libraries: %s\n", message != nullptr ? message : CUPULE_PROJ_LIBRARY);
    std::_Exit(127);
}

void* find(void* from, const char* name)
{
    void* const found = dlsym(from, name);
    if (found == nullptr)
        endAsTheLoaderWould();
    return found;
}

Functions load()
{
    void* const from = dlopen(CUPULE_PROJ_LIBRARY, RTLD_LAZY | RTLD_LOCAL);
    if (from == nullptr)
        endAsTheLoaderWould();
    Functions made;
#define CUPULE_PROJ_FIND(name) made.name = reinterpret_cast<decltype(made.name)>(find(from, #name));
    CUPULE_PROJ_FUNCTIONS(CUPULE_PROJ_FIND)
#undef CUPULE_PROJ_FIND
    return made;
}

} // namespace

const Functions& library()
{
    static const Functions loaded = load();
    return loaded;
}

} // namespace cupule::proj
