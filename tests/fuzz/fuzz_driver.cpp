// SPDX-License-Identifier: MIT
// Replays a corpus and then random mutations of it against one target.
//
//   fuzz_TARGET [--runs N] [--seconds N] [--seed N] CORPUS...
//
// A CORPUS is a folder, of which every *.json is an input, a file *.txt, of which every line is an input, or
// any other file, which is an input as a whole. A failure, a crash or an input that takes longer than 20 s
// ends the run with status 1 and leaves the input in "fuzz-failure.bin"; give that file as the corpus to
// repeat it.
#include "fuzz_driver.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstddef>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <random>
#include <string>
#include <vector>

#include <fcntl.h>
#include <unistd.h>

// Of the sanitizers, when the program was built with them; the name is theirs.
// NOLINTNEXTLINE(bugprone-reserved-identifier)
extern "C" void __sanitizer_set_death_callback(void (*callback)()) __attribute__((weak));

namespace {

namespace fs = std::filesystem;

std::string current; // the input that is being tried

void keep_current() {
    const int file = ::open("fuzz-failure.bin", O_WRONLY | O_CREAT | O_TRUNC, 0644);
    if (file < 0) return;
    [[maybe_unused]] const auto written = ::write(file, current.data(), current.size());
    ::close(file);
}

[[noreturn]] void fail(const char* message) {
    keep_current();
    fmt::print(stderr, "{}\nthe input is in fuzz-failure.bin\n", message);
    std::_Exit(1);
}

extern "C" void on_signal(int signal) {
    keep_current();
    std::signal(signal, SIG_DFL);
    std::raise(signal);
}

extern "C" void on_alarm(int) {
    fail("an input takes longer than 20 s");
}

std::vector<std::string> read_corpus(const std::vector<std::string>& paths) {
    std::vector<std::string> inputs;
    const auto whole = [&](const fs::path& path) {
        std::ifstream stream(path, std::ios::binary);
        inputs.emplace_back(std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>());
    };
    for (const std::string& path : paths) {
        if (fs::is_directory(path)) {
            std::vector<fs::path> files;
            for (const auto& entry : fs::recursive_directory_iterator(path))
                if (entry.path().extension() == ".json") files.push_back(entry.path());
            std::sort(files.begin(), files.end()); // else a seed would not repeat
            std::for_each(files.begin(), files.end(), whole);
        } else if (fs::path(path).extension() == ".txt") {
            std::ifstream stream(path, std::ios::binary);
            for (std::string line; std::getline(stream, line);)
                inputs.push_back(line);
        } else {
            whole(path);
        }
    }
    return inputs;
}

class Mutator {
  public:
    Mutator(const std::vector<std::string>& corpus, std::uint64_t seed) : corpus_(corpus), random_(seed) {
        for (const std::string& input : corpus) {
            collect(input, '"', '"');
            collect(input, ' ', ' ');
            for (KeyAndText found = key_and_text(input, 0); found.end > 0;
                 found = key_and_text(input, found.end))
                texts_of_[found.key].push_back(input.substr(found.begin, found.end - found.begin));
        }
        for (const char* token :
             {"1e308", "1e-308", "-1", "0", "00", "9999999999", "4294967296", "NaN", "null", "true", "[]",
              "{}", "\"\"", "\\u0000", "\xC2\xB7", "\xFF", "->", " + ", "%"})
            tokens_.emplace_back(token);
    }

    std::string next() {
        std::string text = any(corpus_);
        for (std::size_t n = 1 + below(4); n > 0; --n)
            mutate(text);
        return text;
    }

  private:
    std::size_t below(std::size_t limit) { return limit == 0 ? 0 : random_() % limit; }
    const std::string& any(const std::vector<std::string>& from) { return from[below(from.size())]; }

    struct KeyAndText {
        std::string key;
        std::size_t begin = 0, end = 0; // of the text, with its quotes; 0: there is none
    };

    /// The next "key": "text" behind the place.
    static KeyAndText key_and_text(const std::string& input, std::size_t from) {
        const std::size_t colon = input.find("\": \"", from);
        if (colon == std::string::npos || colon == 0) return {};
        const std::size_t key = input.rfind('"', colon - 1);
        const std::size_t end = input.find('"', colon + 4);
        if (key == std::string::npos || end == std::string::npos) return {};
        return {input.substr(key + 1, colon - key - 1), colon + 3, end + 1};
    }

    /// What one file gives as an amount another may give as an amount: such changes get past the first
    /// reader.
    void change_text_of_key(std::string& text) {
        const KeyAndText found = key_and_text(text, below(text.size()));
        const auto texts = texts_of_.find(found.key);
        if (found.end > 0 && texts != texts_of_.end())
            text.replace(found.begin, found.end - found.begin, any(texts->second));
    }

    /// Words between two marks, such as names in quotes, are worth to be put in place of one another.
    void collect(const std::string& input, char open, char close) {
        for (std::size_t begin = input.find(open); begin != std::string::npos;) {
            const std::size_t end = input.find(close, begin + 1);
            if (end == std::string::npos) return;
            if (end - begin < 80 && tokens_.size() < 5000)
                tokens_.push_back(input.substr(begin, end + 1 - begin));
            begin = input.find(open, end + 1);
        }
    }

    void mutate(std::string& text) {
        switch (below(16)) {
        case 0: // another byte
            if (!text.empty()) text[below(text.size())] = static_cast<char>(random_());
            break;
        case 1: // a bit
            if (!text.empty()) {
                char& byte = text[below(text.size())];
                byte = static_cast<char>(static_cast<unsigned char>(byte) ^ (1U << below(8)));
            }
            break;
        case 2: // something left out
            if (const std::size_t at = below(text.size()); !text.empty()) text.erase(at, 1 + below(8));
            break;
        case 3: // something twice
            if (const std::size_t at = below(text.size()); !text.empty())
                text.insert(at, text.substr(at, 1 + below(40)));
            break;
        case 4: // a token between
            text.insert(below(text.size() + 1), any(tokens_));
            break;
        case 5: // a digit
            change_digit(text);
            break;
        case 6: // lines swapped, left out or doubled
            change_lines(text);
            break;
        case 7: // the end of another
            text = text.substr(0, below(text.size() + 1));
            if (const std::string& other = any(corpus_); !other.empty())
                text += other.substr(below(other.size()), 200);
            break;
        case 8: // one quoted text for another, which keeps JSON what it is
        case 9:
            change_quoted(text);
            break;
        default:
            change_text_of_key(text);
        }
    }

    void change_digit(std::string& text) {
        if (text.empty()) return;
        const std::size_t from = below(text.size());
        const std::size_t at = text.find_first_of("0123456789", from);
        if (at == std::string::npos) return;
        if (below(2) == 0)
            text[at] = static_cast<char>('0' + below(10));
        else
            text.insert(at, std::string(1 + below(4), static_cast<char>('0' + below(10))));
    }

    void change_lines(std::string& text) {
        std::vector<std::string> lines(1);
        for (const char c : text) {
            lines.back() += c;
            if (c == '\n') lines.emplace_back();
        }
        const std::size_t a = below(lines.size());
        const std::size_t b = below(lines.size());
        if (below(3) == 0)
            std::swap(lines[a], lines[b]);
        else if (below(2) == 0)
            lines[a].clear();
        else
            lines[a] += lines[b];
        text.clear();
        for (const std::string& line : lines)
            text += line;
    }

    void change_quoted(std::string& text) {
        const std::size_t open = text.empty() ? std::string::npos : text.find('"', below(text.size()));
        const std::size_t close = open == std::string::npos ? open : text.find('"', open + 1);
        if (close == std::string::npos) return;
        const std::string& token = any(tokens_);
        text.replace(open, close + 1 - open, token.front() == '"' ? token : '"' + token + '"');
    }

    const std::vector<std::string>& corpus_;
    std::vector<std::string> tokens_;
    std::map<std::string, std::vector<std::string>> texts_of_;
    std::mt19937_64 random_;
};

bool try_one(std::string input) {
    current = std::move(input);
    bool accepted = false;
    ::alarm(20);
    try {
        accepted = fuzz::try_input(current);
    } catch (const std::exception& error) {
        fail(fmt::format("an exception escaped: {}", error.what()).c_str());
    }
    ::alarm(0);
    return accepted;
}

} // namespace

void fuzz::require(bool condition, const char* message) {
    if (!condition) fail(message);
}

int main(int argc, char** argv) {
    long runs = -1;
    long seconds = -1;
    std::uint64_t seed = 1;
    std::vector<std::string> paths;
    for (int i = 1; i < argc; ++i) {
        const std::string word = argv[i];
        const bool option = word.starts_with("--") && i + 1 < argc;
        if (!option)
            paths.push_back(word);
        else if (word == "--runs")
            runs = std::atol(argv[++i]);
        else if (word == "--seconds")
            seconds = std::atol(argv[++i]);
        else if (word == "--seed")
            seed = static_cast<std::uint64_t>(std::atol(argv[++i]));
    }
    if (__sanitizer_set_death_callback != nullptr)
        __sanitizer_set_death_callback(keep_current);
    else
        for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT})
            std::signal(signal, on_signal);
    std::signal(SIGALRM, on_alarm);

    const std::vector<std::string> corpus = read_corpus(paths);
    if (corpus.empty()) {
        fmt::print(stderr, "no corpus\n");
        return 2;
    }
    for (const std::string& input : corpus)
        try_one(input);
    Mutator mutator(corpus, seed);
    const auto start = std::chrono::steady_clock::now();
    const auto over = [&](long done) {
        if (seconds >= 0) return std::chrono::steady_clock::now() - start >= std::chrono::seconds(seconds);
        return done >= runs;
    };
    long done = 0, accepted = 0;
    for (; !over(done); ++done)
        if (try_one(mutator.next())) ++accepted;
    fmt::print("{} inputs of the corpus and {} mutations, of which {} accepted\n", corpus.size(), done,
               accepted);
}
