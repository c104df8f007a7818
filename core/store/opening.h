// Finding out what a file is before it is opened for work, and opening it. Inside the store room only; throws StoreError.

#pragma once

#include <string>

#include "core/store/store_core.h"

namespace cupule {

/// Looks at the first bytes and at the rights. Throws store.missing, store.folder, store.foreign, store.damaged, store.newer.
void refuseWhatIsNoStore(const std::string& path);
/// Whether the file and its folder can be written.
bool onWritableGround(const std::string& path);
/// Opens the connection for work, or for reading where the ground allows no more; upgrades an older store after a backup.
void openCore(StoreCore& core, const std::string& path, const OpenRequest& request);
/// A copy of the store's own description as it is digested in the journal.
std::string storeContent(const StoreInfo& info);

} // namespace cupule
