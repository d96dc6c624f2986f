# Installs the build, then builds and runs a small program against what was installed.
# cmake -DBUILD=... -DUSER=... -DWORK=... -DCOMPILER=... -DFLAGS=... -P package.cmake
file(REMOVE_RECURSE ${WORK})
function(run)
    execute_process(COMMAND ${ARGV} RESULT_VARIABLE status)
    if(status)
        message(FATAL_ERROR "failed: ${ARGV}")
    endif()
endfunction()
run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${WORK}/installed)
run(${CMAKE_COMMAND} -S ${USER} -B ${WORK}/build -DCMAKE_PREFIX_PATH=${WORK}/installed -DCMAKE_CXX_COMPILER=${COMPILER}
    -DCMAKE_CXX_FLAGS=${FLAGS} -DCMAKE_BUILD_TYPE=Release)
run(${CMAKE_COMMAND} --build ${WORK}/build)
run(${WORK}/build/user)
run(${WORK}/installed/bin/rakewright --version)
