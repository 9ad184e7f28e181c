# What `cmake --install build --prefix DIR` puts where: the program, the example routes, and the library with its
# headers, which another CMake project then finds as find_package(routeweigh) and links as routeweigh::app.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/routeweigh)
foreach(module base input chemistry route assess compare writing documents app)
  if(TARGET routeweigh_${module})
    set_target_properties(routeweigh_${module} PROPERTIES EXPORT_NAME ${module})
    install(TARGETS routeweigh_${module} EXPORT routeweigh ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR}
            INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/routeweigh)
    install(DIRECTORY ${PROJECT_SOURCE_DIR}/src/${module} DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/routeweigh
            FILES_MATCHING PATTERN "*.hpp")
  endif()
endforeach()
install(EXPORT routeweigh NAMESPACE routeweigh:: FILE routeweighTargets.cmake DESTINATION ${package_folder})

file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/package/routeweighConfig.cmake @ONLY CONTENT
"include(CMakeFindDependencyMacro)
find_dependency(fmt)
include(\"\${CMAKE_CURRENT_LIST_DIR}/routeweighTargets.cmake\")
")
write_basic_package_version_file(${PROJECT_BINARY_DIR}/package/routeweighConfigVersion.cmake
                                 COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/package/routeweighConfig.cmake
              ${PROJECT_BINARY_DIR}/package/routeweighConfigVersion.cmake DESTINATION ${package_folder})

if(TARGET routeweigh)
  install(TARGETS routeweigh RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
endif()
if(EXISTS ${PROJECT_SOURCE_DIR}/routes)
  install(DIRECTORY ${PROJECT_SOURCE_DIR}/routes DESTINATION ${CMAKE_INSTALL_DATADIR}/routeweigh)
endif()
