#include "write.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace rakewright {
namespace {

/// A file that is closed when it goes out of sight.
class File {
 public:
    explicit File(int handle) : handle_(handle) {}
    File(const File&) = delete;
    File& operator=(const File&) = delete;
    ~File() {
        if (handle_ >= 0) ::close(handle_);
    }
    int handle() const { return handle_; }
    bool close() {
        const int handle = handle_;
        handle_ = -1;
        return ::close(handle) == 0;
    }

 private:
    int handle_;
};

std::string reason() { return std::strerror(errno); }

bool write_all(int handle, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(handle, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    if (slash == std::string::npos) return ".";
    return slash == 0 ? "/" : path.substr(0, slash);
}

std::optional<std::string> write_straight(const std::string& path, std::string_view text) {
    File file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (file.handle() < 0 || !write_all(file.handle(), text) || !file.close()) return reason();
    return std::nullopt;
}

/// Into a new file beside the target, then over it.
std::optional<std::string> replace(const std::string& path, std::string_view text, mode_t mode) {
    std::string beside = path + ".XXXXXX";
    File file(::mkostemp(beside.data(), O_CLOEXEC));
    if (file.handle() < 0) return reason();
    const bool done = write_all(file.handle(), text) && ::fchmod(file.handle(), mode) == 0 &&
                      ::fsync(file.handle()) == 0 && file.close() && std::rename(beside.c_str(), path.c_str()) == 0;
    if (!done) {
        const std::string why = reason();
        ::unlink(beside.c_str());
        return why;
    }
    // The new name is safe only when the folder is on the disk too; a file system that cannot sync a folder has done
    // what it can.
    const File folder(::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder.handle() >= 0) ::fsync(folder.handle());
    return std::nullopt;
}

mode_t new_file_mode() {
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666 & ~mask;
}

/// Where a link leads, so that the file behind it is replaced and not the link.
std::string behind_links(const std::string& path) {
    char* const real = ::realpath(path.c_str(), nullptr);
    if (!real) return path;
    std::string target(real);
    std::free(real);
    return target;
}

}  // namespace

std::optional<std::string> write_file(const std::string& path, std::string_view text) {
    struct stat old {};
    if (::stat(path.c_str(), &old) != 0) return replace(path, text, new_file_mode());
    if (S_ISDIR(old.st_mode)) return std::string("it is a folder");
    if (!S_ISREG(old.st_mode)) return write_straight(path, text);
    return replace(behind_links(path), text, old.st_mode & 07777);
}

Written write_out(std::string_view text, std::string& why) {
    if (write_all(STDOUT_FILENO, text)) {
        // A full disk may show only when the file is closed; standard input may be the same file, so a copy of the
        // handle is closed.
        const int copy = ::dup(STDOUT_FILENO);
        if (copy >= 0 && ::close(copy) == 0) return Written::whole;
    }
    if (errno == EPIPE) return Written::reader_left;
    why = reason();
    return Written::failed;
}

std::optional<std::string> read_file(const std::string& path, std::size_t limit, std::string& why) {
    const bool standard = path == "-";
    const File file(standard ? ::dup(STDIN_FILENO) : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (file.handle() < 0) {
        why = reason();
        return std::nullopt;
    }
    std::string text;
    struct stat state {};
    if (::fstat(file.handle(), &state) == 0 && S_ISREG(state.st_mode) && state.st_size > 0)
        text.reserve(std::min(static_cast<std::size_t>(state.st_size), limit) + 1);
    char block[1 << 16];
    for (;;) {
        const ssize_t got = ::read(file.handle(), block, sizeof block);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) {
            why = reason();
            return std::nullopt;
        }
        if (got == 0) return text;
        text.append(block, static_cast<std::size_t>(got));
        if (text.size() > limit) {
            why = "it is larger than " + std::to_string(limit >> 20) + " MiB";
            return std::nullopt;
        }
    }
}

}  // namespace rakewright
