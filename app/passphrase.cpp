#include "app/passphrase.h"

#include <algorithm>

#include "core/base/file.h"

namespace cupule::app {

Result<std::string> passphraseFrom(const std::string& path)
{
    if (path.empty())
        return std::string();
    auto text = readFile(path, 1 << 16);
    if (!text)
        return text;
    text->resize(std::min(text->find_first_of("\r\n"), text->size()));
    if (text->empty())
        return fail("key.passphrase-empty", FaultKind::usage);
    return text;
}

} // namespace cupule::app
