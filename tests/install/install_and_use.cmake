# cmake -DBUILD=DIR -DVERSION=N -DCONSUMER=DIR -P install_and_use.cmake
set(prefix ${BUILD}/install-test/prefix)
file(REMOVE_RECURSE ${BUILD}/install-test)

function(run)
  execute_process(COMMAND ${ARGV} RESULT_VARIABLE status OUTPUT_VARIABLE output ERROR_VARIABLE output)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "${ARGV}\nended with ${status}:\n${output}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${prefix})

# The installed program knows its version and its catalogue, away from the sources.
run(${CMAKE_COMMAND} -E chdir ${prefix} bin/routeweigh --version)
if(NOT output MATCHES "${VERSION}")
  message(FATAL_ERROR "--version says: ${output}")
endif()
run(${CMAKE_COMMAND} -E chdir ${prefix} bin/routeweigh check share/routeweigh/routes/4-bromoacetanilide)

# Another project finds the library.
run(${CMAKE_COMMAND} -S ${CONSUMER} -B ${BUILD}/install-test/consumer -G Ninja -DCMAKE_PREFIX_PATH=${prefix})
run(${CMAKE_COMMAND} --build ${BUILD}/install-test/consumer)
run(${BUILD}/install-test/consumer/consumer)
string(STRIP "${output}" output)
if(NOT output STREQUAL "acetanilide 135.166")
  message(FATAL_ERROR "the other project printed: ${output}")
endif()
