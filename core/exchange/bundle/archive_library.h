// libarchive, loaded when the first bundle is written or read: it brings ten libraries of its own, for which no start of the program
// should pay. Its header says what the functions are; nothing is linked.

#pragma once

#include <archive.h>
#include <archive_entry.h>

#include "core/base/result.h"

namespace cupule {

#define CUPULE_ARCHIVE_FUNCTIONS(each) \
    each(archive_error_string) each(archive_entry_clear) each(archive_entry_filetype) each(archive_entry_free) \
    each(archive_entry_hardlink) each(archive_entry_is_encrypted) each(archive_entry_new) each(archive_entry_pathname) \
    each(archive_entry_set_filetype) each(archive_entry_set_mtime) each(archive_entry_set_pathname) each(archive_entry_set_perm) \
    each(archive_entry_set_size) each(archive_entry_size) each(archive_entry_size_is_set) each(archive_entry_symlink) \
    each(archive_read_close) each(archive_read_data) each(archive_read_free) each(archive_read_new) \
    each(archive_read_next_header) each(archive_read_open_filename) each(archive_read_support_format_zip_seekable) \
    each(archive_write_close) each(archive_write_data) each(archive_write_free) each(archive_write_header) each(archive_write_new) \
    each(archive_write_open_filename) each(archive_write_set_bytes_in_last_block) each(archive_write_set_format_zip) \
    each(archive_write_zip_set_compression_deflate) each(archive_write_zip_set_compression_store)

struct ArchiveLibrary {
#define CUPULE_DECLARE(name) decltype(&::name) name = nullptr;
    CUPULE_ARCHIVE_FUNCTIONS(CUPULE_DECLARE)
#undef CUPULE_DECLARE
};

/// Loaded once and kept. Fault "bundle.library" where it is not installed.
Result<const ArchiveLibrary*> archiveLibrary();

} // namespace cupule
