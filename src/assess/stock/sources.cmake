# Sources of the stock list, relative to src/assess.
set(stock_sources
    stock/label_sheets.cpp
    stock/pack_choice.cpp
    stock/price_list.cpp
    stock/shelf.cpp
    stock/stock_list.cpp
    stock/stockroom.cpp)
