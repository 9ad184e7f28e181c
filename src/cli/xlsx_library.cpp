// SPDX-License-Identifier: MIT
#include "cli/xlsx_library.hpp"

#include "cli/files.hpp"

#include <fmt/format.h>

#include <dlfcn.h>

namespace routeweigh::cli {

XlsxLibrary::XlsxLibrary() : handle_(::dlopen(ROUTEWEIGH_XLSX_LIBRARY, RTLD_NOW)) {
    if (handle_ == nullptr)
        throw FileError(
            fmt::format("cannot make the workbook without libxlsxwriter ({}); on Debian it comes with "
                        "the package libxlsxwriter4",
                        ::dlerror()));
}

XlsxLibrary::~XlsxLibrary() {
    ::dlclose(handle_);
}

void* XlsxLibrary::symbol(const char* name) const {
    void* const found = ::dlsym(handle_, name);
    if (found == nullptr)
        throw FileError(fmt::format("cannot make the workbook: this libxlsxwriter has no {}", name));
    return found;
}

} // namespace routeweigh::cli
