#include "core/exchange/bundle/archive_library.h"

#include <dlfcn.h>

namespace cupule {

namespace {

struct Loaded {
    ArchiveLibrary functions;
    std::string missing;
};

template <class Function>
void take(void* library, const char* name, Function& function, std::string& missing)
{
    function = reinterpret_cast<Function>(::dlsym(library, name));
    if (function == nullptr)
        missing = name;
}

Loaded load()
{
    Loaded loaded;
    void* library = ::dlopen("libarchive.so.13", RTLD_NOW | RTLD_LOCAL);
    if (library == nullptr) {
        const char* why = ::dlerror();
        loaded.missing = why == nullptr ? "libarchive.so.13" : why;
        return loaded;
    }
#define CUPULE_TAKE(name) take(library, #name, loaded.functions.name, loaded.missing);
    CUPULE_ARCHIVE_FUNCTIONS(CUPULE_TAKE)
#undef CUPULE_TAKE
    return loaded;
}

} // namespace

Result<const ArchiveLibrary*> archiveLibrary()
{
    static const Loaded loaded = load();
    if (!loaded.missing.empty())
        return fail(Fault{"bundle.library", FaultKind::io, {}, {}, loaded.missing});
    return &loaded.functions;
}

} // namespace cupule
