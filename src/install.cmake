# What `cmake --install build --prefix DIR` puts where: the program, the example routes, and the library with its
# headers, which another CMake project then finds as find_package(routeweigh) and links as routeweigh::app.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/routeweigh)
foreach(module base input chemistry route assess compare writing documents app)
  if(TARGET routeweigh_${module})
    set_target_properties(routeweigh_${module} PROPERTIES EXPORT_NAME ${module})
    install(TARGETS routeweigh_${module} EXPORT routeweigh
            ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/routeweigh)
    install(DIRECTORY ${PROJECT_SOURCE_DIR}/src/${module} DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/routeweigh
            COMPONENT library FILES_MATCHING PATTERN "*.hpp")
  endif()
endforeach()
install(EXPORT routeweigh NAMESPACE routeweigh:: FILE routeweighTargets.cmake DESTINATION ${package_folder}
        COMPONENT library)

file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/package/routeweighConfig.cmake @ONLY CONTENT
"include(CMakeFindDependencyMacro)
find_dependency(fmt)
find_dependency(Threads)
include(\"\${CMAKE_CURRENT_LIST_DIR}/routeweighTargets.cmake\")
")
write_basic_package_version_file(${PROJECT_BINARY_DIR}/package/routeweighConfigVersion.cmake
                                 COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/package/routeweighConfig.cmake
              ${PROJECT_BINARY_DIR}/package/routeweighConfigVersion.cmake DESTINATION ${package_folder}
        COMPONENT library)

if(TARGET routeweigh)
  install(TARGETS routeweigh RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR} COMPONENT program)
  install(FILES ${PROJECT_BINARY_DIR}/manual/routeweigh.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
  install(FILES ${PROJECT_BINARY_DIR}/manual/routeweigh
          DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
  install(FILES ${PROJECT_SOURCE_DIR}/README.md ${PROJECT_SOURCE_DIR}/CHANGELOG.md DESTINATION ${CMAKE_INSTALL_DOCDIR}
          COMPONENT program)
endif()
install(DIRECTORY ${PROJECT_SOURCE_DIR}/routes DESTINATION ${CMAKE_INSTALL_DATADIR}/routeweigh COMPONENT program)

# `cpack --config build/CPackConfig.cmake` makes routeweigh_VERSION_ARCH.deb: the program without the library.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME routeweigh)
set(CPACK_PACKAGE_CONTACT "the makers of routeweigh <routeweigh@example.org>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_COMPONENTS_ALL program)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME routeweigh)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_DEPENDS libxlsxwriter4) # loaded at need, so no linker names it
set(CPACK_STRIP_FILES ON)
include(CPack)
