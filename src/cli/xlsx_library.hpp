// SPDX-License-Identifier: MIT
// libxlsxwriter, loaded when a workbook is made. It brings a cryptographic library along, and every other
// command would pay for loading both at its start.
#pragma once

#include <string>

#include <xlsxwriter.h>

namespace routeweigh::cli {

class XlsxLibrary {
  public:
    /// \throws FileError  the library is not installed, or lacks a function
    XlsxLibrary();
    ~XlsxLibrary();
    XlsxLibrary(const XlsxLibrary&) = delete;
    XlsxLibrary& operator=(const XlsxLibrary&) = delete;

  private:
    template<typename Function>
    Function* find(const char* name) const {
        return reinterpret_cast<Function*>(symbol(name)); // as POSIX has it for dlsym
    }
    void* symbol(const char* name) const;
    void* handle_;

  public:
#define ROUTEWEIGH_XLSX(function) decltype(::function)* const function = find<decltype(::function)>(#function)
    ROUTEWEIGH_XLSX(lxw_strerror);
    ROUTEWEIGH_XLSX(workbook_new_opt);
    ROUTEWEIGH_XLSX(workbook_set_properties);
    ROUTEWEIGH_XLSX(workbook_add_format);
    ROUTEWEIGH_XLSX(workbook_add_worksheet);
    ROUTEWEIGH_XLSX(workbook_close);
    ROUTEWEIGH_XLSX(format_set_num_format);
    ROUTEWEIGH_XLSX(format_set_bold);
    ROUTEWEIGH_XLSX(format_set_italic);
    ROUTEWEIGH_XLSX(format_set_font_size);
    ROUTEWEIGH_XLSX(format_set_font_color);
    ROUTEWEIGH_XLSX(format_set_bg_color);
    ROUTEWEIGH_XLSX(format_set_border);
    ROUTEWEIGH_XLSX(format_set_bottom);
    ROUTEWEIGH_XLSX(format_set_align);
    ROUTEWEIGH_XLSX(format_set_text_wrap);
    ROUTEWEIGH_XLSX(worksheet_set_column);
    ROUTEWEIGH_XLSX(worksheet_freeze_panes);
    ROUTEWEIGH_XLSX(worksheet_set_landscape);
    ROUTEWEIGH_XLSX(worksheet_fit_to_pages);
    ROUTEWEIGH_XLSX(worksheet_write_formula_num);
    ROUTEWEIGH_XLSX(worksheet_write_number);
    ROUTEWEIGH_XLSX(worksheet_write_string);
    ROUTEWEIGH_XLSX(worksheet_write_blank);
#undef ROUTEWEIGH_XLSX
};

} // namespace routeweigh::cli
