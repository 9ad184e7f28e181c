// SPDX-License-Identifier: MIT
// Prints the sample document in the format named on the command line, for looking at a writer's work.
#include "writing/sample_document.hpp"
#include "writing/writer_list.hpp"

#include <cstdio>

int main(int count, char** words) {
    using namespace routeweigh::writing;
    const Writer* writer = find_writer(count > 1 ? words[1] : "terminal");
    if (writer == nullptr) return 2;
    const std::string text = writer->write(sample_document(), {});
    return std::fwrite(text.data(), 1, text.size(), stdout) == text.size() ? 0 : 2;
}
